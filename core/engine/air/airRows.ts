import type { FunctionRow, Parameter } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import {
  absolutePressure,
  airFlow,
  cylinders,
  displacement,
  engineSpeed,
  quantity,
  temperaturePoint,
} from '../parameters.ts';
import { airDensity } from './airDensity.ts';
import { absoluteLoad, airPerStroke, volumetricEfficiency } from './airFlow.ts';
import { barometerByRule } from './barometerByRule.ts';
import { calculatedLoad } from './calculatedLoad.ts';
import { speedDensity } from './speedDensity.ts';
import { altitudeOf, standardPressure } from './standardAtmosphere.ts';
import { stationPressure } from './stationPressure.ts';
import { vacuumAtAltitude } from './vacuumAtAltitude.ts';

const altitude = (from: string, to: string): Parameter =>
  quantity('altitude', 'm', 'altitude above sea level', { header: 'site.altitude', within: { from, to } });
const lowestLayer = altitude('-4996 m', '11019 m');
const standstill = 'The engine stands still (0 rpm).';
const backwards = 'The air flow is negative.';
const noPressure = 'The pressure is not above absolute zero.';

export const airRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'standard_pressure',
    family: 'air',
    summary: 'The barometer of the standard atmosphere at an altitude above sea level.',
    parameters: [lowestLayer],
    result: { kind: 'fixed', unit: 'kPa', quantityKind: 'absolute' },
    formula: 'p = 101.325 kPa · (1 − 0.0065·H/288.15)^5.255876\nH = 6356766·Z/(6356766 + Z)',
    where: [
      ['p', 'the barometer', 'kPa'],
      ['H', 'altitude counted under constant gravity (geopotential)', 'm'],
      ['Z', 'altitude'],
    ],
    range: 'weather moves the real barometer by up to 5 %',
    errors: ['The altitude is outside the standard atmosphere’s lowest layer.'],
    source: 'U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562), equation 33a; ICAO Doc 7488',
    example: { expression: 'standard_pressure(5000 ft)', result: '84.311 kPa' },
    compute: ofNumbers(standardPressure),
  },
  {
    form: 'scalar',
    name: 'altitude_of',
    family: 'air',
    summary: 'The altitude above sea level at which the standard atmosphere has this pressure.',
    parameters: [
      absolutePressure('pressure', 'absolute pressure, a barometer', {
        within: { from: '22.64 kPa', to: '177.6 kPa' },
      }),
    ],
    result: { kind: 'fixed', unit: 'm' },
    formula: 'Z = 6356766·H/(6356766 − H)\nH = 288.15/0.0065 · (1 − (p/101.325 kPa)^(1/5.255876))',
    where: [
      ['Z', 'altitude above sea level', 'm'],
      ['H', 'the same counted under constant gravity (geopotential)', 'm'],
      ['p', 'pressure'],
    ],
    range: '',
    errors: ['The pressure is one that the lowest layer of the standard atmosphere does not have.'],
    source: 'U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562), equation 33a, solved for the altitude',
    example: { expression: 'altitude_of(25.842 inHg)', result: '1219 m' },
    compute: ofNumbers(altitudeOf),
  },
  {
    form: 'scalar',
    name: 'station_pressure',
    family: 'air',
    summary: 'The barometer at the site from the weather report’s sea-level figure (altimeter setting, QNH).',
    parameters: [
      absolutePressure('sea_level_pressure', 'the weather report’s figure', {
        within: { from: '850 hPa', to: '1100 hPa' },
        header: 'site.sea_level_pressure',
      }),
      altitude('-500 m', '6000 m'),
    ],
    result: { kind: 'like', parameter: 'sea_level_pressure', quantityKind: 'absolute' },
    formula: 'p = A · ((288 − 0.0065·h)/288)^5.2561',
    where: [
      ['p', 'the barometer at the site', 'as A'],
      ['A', 'sea_level_pressure'],
      ['h', 'altitude'],
    ],
    range: '',
    errors: [
      'The figure is one that no weather has at sea level.',
      'The altitude is outside -500 .. 6000 m.',
    ],
    source: 'U.S. National Weather Service, station pressure from altimeter setting (value from memory)',
    example: { expression: 'station_pressure(30.10 inHg, 1609.344 m)', result: '24.7806 inHg' },
    compute: ofNumbers(stationPressure),
  },
  {
    form: 'scalar',
    name: 'barometer_by_rule',
    family: 'air',
    summary:
      'The barometer by the rule of thumb, one inch of mercury for a thousand feet; the true fall is 1.07 inHg at the sea and 0.92 inHg at 5000 ft.',
    parameters: [
      absolutePressure('sea_level_pressure', 'the weather report’s figure', {
        within: { above: '0 kPa' },
        header: 'site.sea_level_pressure',
      }),
      altitude('-1000 ft', '10000 ft'),
    ],
    result: { kind: 'like', parameter: 'sea_level_pressure', quantityKind: 'absolute' },
    formula: 'p = A − 1 inHg · h/1000 ft',
    where: [
      ['p', 'the barometer at the site', 'as A'],
      ['A', 'sea_level_pressure'],
      ['h', 'altitude'],
    ],
    range: 'within 0.25 inHg of the standard atmosphere up to 7000 ft, 0.7 inHg low at 10000 ft',
    errors: ['The altitude is outside -1000 .. 10000 ft.', noPressure],
    source:
      'common practice; FAA, Pilot’s Handbook of Aeronautical Knowledge, glossary (3000 ft: 26.92 inHg)',
    example: { expression: 'barometer_by_rule(29.92 inHg, 3000 ft)', result: '26.92 inHg' },
    compute: ofNumbers(barometerByRule),
  },
  {
    form: 'scalar',
    name: 'vacuum_at_altitude',
    family: 'air',
    summary: 'The manifold vacuum at an altitude of an engine that has this vacuum at sea level.',
    parameters: [
      quantity('vacuum', 'inHg', 'manifold vacuum at sea level', {
        within: { from: '0 kPa', below: '101.325 kPa' },
        kind: 'vacuum',
      }),
      lowestLayer,
    ],
    result: { kind: 'like', parameter: 'vacuum', quantityKind: 'vacuum' },
    formula: 'v = vacuum − (101.325 kPa − standard_pressure(altitude))',
    where: [['v', 'vacuum at the altitude', 'as vacuum']],
    range: 'the same absolute manifold pressure is taken at both places',
    errors: [
      'The altitude is outside the standard atmosphere’s lowest layer.',
      'The vacuum is below 0 or as deep as the barometer.',
      'No vacuum is left at this altitude.',
    ],
    source:
      'U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562); that the absolute manifold pressure stays is common practice',
    example: { expression: 'vacuum_at_altitude(19 inHg, 5000 ft)', result: '13.98 inHg' },
    compute: ofNumbers(vacuumAtAltitude),
  },
  {
    form: 'scalar',
    name: 'air_density',
    family: 'air',
    summary: 'The density of air, dry or moist.',
    parameters: [
      absolutePressure('pressure', 'absolute pressure', { within: { above: '0 kPa' } }),
      temperaturePoint('temperature', 'air temperature', { within: { above: '-273.15 °C' } }),
      quantity('humidity', '%', 'relative humidity', {
        within: { from: '0 %', to: '100 %' },
        otherwise: '0 %',
      }),
    ],
    result: { kind: 'fixed', unit: 'g/L' },
    formula:
      'ρ = (p − e)/(287.05 J/(kg·K) · T) + e/(461.5 J/(kg·K) · T)\ne = φ · 611.2 Pa · exp(17.62·t/(243.12 + t))',
    where: [
      ['ρ', 'density of the air', 'g/L'],
      ['p', 'pressure'],
      ['e', 'pressure of the water vapour in it', 'Pa'],
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['φ', 'humidity'],
      ['t', 'temperature'],
    ],
    range: 'with a humidity above 0, from -45 to 60 °C',
    errors: [
      noPressure,
      'The humidity is below 0 or above 100 %.',
      'The temperature is outside -45 .. 60 °C and a humidity is given.',
    ],
    source: 'ideal gas law for moist air; saturation pressure after Magnus, WMO-No. 8',
    example: { expression: 'air_density(101.325 kPa, 25 °C, 50 %)', result: '1.177 g/L' },
    compute: ofNumbers(airDensity),
  },
  {
    form: 'scalar',
    name: 'air_per_stroke',
    family: 'air',
    fourStroke: true,
    summary: 'The mass of air that one intake stroke draws in (four-stroke).',
    parameters: [airFlow, engineSpeed, cylinders],
    result: { kind: 'fixed', unit: 'g' },
    formula: 'm = maf/(cycles · cylinders)\ncycles = rpm/120',
    where: [
      ['m', 'air that one intake stroke draws in', 'g'],
      ['cycles', 'engine cycles in a second', '1/s'],
    ],
    range: '',
    errors: [standstill, backwards],
    source: 'SAE J1979, definition of absolute load',
    example: { expression: 'air_per_stroke(3.5 g/s, 750 rpm, 4)', result: '0.14 g' },
    compute: ofNumbers(airPerStroke),
  },
  {
    form: 'scalar',
    name: 'absolute_load',
    family: 'air',
    fourStroke: true,
    summary: 'How full the cylinders are, referred to air of 1.184 g/L. A boosted engine passes 100 %.',
    parameters: [airFlow, engineSpeed, displacement],
    result: { kind: 'fixed', unit: '%' },
    formula: 'load = maf/(cycles · displacement · 1.184 g/L)\ncycles = rpm/120',
    where: [
      ['load', 'absolute load', '%'],
      ['cycles', 'engine cycles in a second', '1/s'],
    ],
    range: 'generic data carry up to 25700 %; not corrected for the barometer',
    errors: [standstill, backwards, 'The displacement is not above 0.'],
    source: 'SAE J1979 / ISO 15031-5, LOAD_ABS',
    example: { expression: 'absolute_load(25 g/s, 2500 rpm, 2.0 L)', result: '50.676 %' },
    compute: ofNumbers(absoluteLoad),
  },
  {
    form: 'scalar',
    name: 'volumetric_efficiency',
    family: 'air',
    fourStroke: true,
    summary:
      'The air that the engine draws in, of what its displacement would hold at this pressure and temperature (four-stroke).',
    parameters: [
      airFlow,
      engineSpeed,
      absolutePressure(
        'pressure',
        'the barometer for the whole engine, manifold pressure for the cylinders alone',
        { within: { above: '0 kPa' } },
      ),
      temperaturePoint('temperature', 'temperature of that air', { within: { above: '-273.15 °C' } }),
      displacement,
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'η = maf/(cycles · displacement · ρ)\ncycles = rpm/120\nρ = p/(287.05 J/(kg·K) · T)',
    where: [
      ['η', 'volumetric efficiency', '%'],
      ['cycles', 'engine cycles in a second', '1/s'],
      ['ρ', 'density of that air', 'g/L'],
      ['p', 'pressure'],
      ['T', 'temperature, counted from absolute zero', 'K'],
    ],
    range: 'dry air; humid air is up to 2 % lighter',
    errors: [standstill, backwards, noPressure, 'The displacement is not above 0.'],
    source: 'Heywood, Internal Combustion Engine Fundamentals, chapter 2',
    example: {
      expression: 'volumetric_efficiency(120 g/s, 6000 rpm, 101.325 kPa, 25 °C, 2.0 L)',
      result: '101.36 %',
    },
    compute: ofNumbers(volumetricEfficiency),
  },
  {
    form: 'scalar',
    name: 'calculated_load',
    family: 'air',
    summary:
      'The air flow of now, of the most that the engine could draw at this speed, barometer and temperature.',
    parameters: [
      airFlow,
      quantity('peak', 'g/s', 'air flow at wide open throttle, this speed, 25 °C and 29.92 inHg', {
        within: { above: '0 g/s' },
      }),
      absolutePressure('baro', 'the barometer at the site', { within: { above: '0 kPa' } }),
      temperaturePoint('temperature', 'temperature of the outside air', { within: { above: '-273 °C' } }),
    ],
    result: { kind: 'fixed', unit: '%' },
    formula: 'load = maf/(peak · p/29.92 inHg · √(298/(t + 273)))',
    where: [
      ['load', 'calculated load', '%'],
      ['p', 'baro'],
      ['t', 'temperature'],
    ],
    answers: {
      from: '0 %',
      to: '100 %',
      caution:
        'No engine draws more than at wide open throttle: the peak flow is not this engine’s at this speed, or the engine is boosted.',
    },
    range: '',
    errors: ['The peak flow is not above 0.', noPressure, backwards],
    source: 'SAE J1979 / ISO 15031-5, LOAD_PCT',
    example: { expression: 'calculated_load(25 g/s, 100 g/s, 29.92 inHg, 25 °C)', result: '25 %' },
    compute: ofNumbers(calculatedLoad),
  },
  {
    form: 'scalar',
    name: 'airflow',
    family: 'air',
    fourStroke: true,
    summary:
      'The air mass flow that manifold pressure, temperature and speed stand for (speed-density, four-stroke).',
    parameters: [
      absolutePressure('map', 'intake manifold pressure', { within: { above: '0 kPa' } }),
      temperaturePoint('iat', 'intake air temperature', { within: { above: '-273.15 °C' } }),
      engineSpeed,
      quantity('volumetric_efficiency', '%', 'volumetric efficiency referred to the manifold', {
        within: { from: '0 %' },
      }),
      displacement,
    ],
    result: { kind: 'fixed', unit: 'g/s' },
    formula: 'maf = η · map · displacement · cycles/(287.05 J/(kg·K) · T)\ncycles = rpm/120',
    where: [
      ['maf', 'air mass flow', 'g/s'],
      ['η', 'volumetric_efficiency'],
      ['cycles', 'engine cycles in a second', '1/s'],
      ['T', 'iat, counted from absolute zero', 'K'],
    ],
    range: '',
    errors: [
      standstill,
      noPressure,
      'The volumetric efficiency is negative.',
      'The displacement is not above 0.',
    ],
    source: 'Heywood, Internal Combustion Engine Fundamentals, chapter 2',
    example: { expression: 'airflow(35 kPa, 40 °C, 800 rpm, 75 %, 2.0 L)', result: '3.8937 g/s' },
    compute: ofNumbers(speedDensity),
  },
];
