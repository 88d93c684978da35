import type { Signal } from '../types.ts';
import { practiceOf, usually } from './usual.ts';

/** Oil, crankcase and exhaust pressure, and whether the camshafts stand where they should. */
export const mechanical: readonly Signal[] = [
  {
    name: 'oil_pressure',
    meaning: 'Engine oil pressure',
    family: 'mechanical',
    holds: 'quantity',
    forms: [
      {
        unit: 'psi',
        kind: 'gauge',
        physical: '-5 .. 250 psi',
        usual: [
          usually('key on engine off', '0 .. 2 psi'),
          usually('cold idle', '20 .. 120 psi'),
          usually('warm idle', '10 .. 65 psi'),
          usually('2500 rpm no load', '30 .. 90 psi'),
          usually('cruise', '25 .. 90 psi'),
        ],
      },
    ],
    alsoCalled: ['engine oil pressure', 'oil press', 'eop', 'oil gauge'],
  },
  {
    name: 'oil_pressure_desired',
    meaning: 'Oil pressure that the control asks of a variable pump',
    family: 'mechanical',
    holds: 'quantity',
    forms: [{ unit: 'psi', kind: 'gauge', physical: '-5 .. 250 psi' }],
    alsoCalled: ['desired oil pressure', 'commanded oil pressure', 'target oil pressure'],
  },
  {
    name: 'injection_oil_pressure',
    meaning: 'Oil pressure that drives hydraulic injectors',
    family: 'mechanical',
    holds: 'quantity',
    forms: [{ unit: 'MPa', kind: 'gauge', physical: '-0.1 .. 60 MPa' }],
    alsoCalled: ['injection control pressure', 'icp', 'high pressure oil'],
  },
  {
    name: 'crankcase_pressure',
    meaning: 'Pressure in the crankcase, above the barometer',
    family: 'mechanical',
    holds: 'quantity',
    forms: [
      {
        unit: 'inH2O',
        kind: 'gauge',
        physical: '-400 .. 400 inH2O',
        usual: [
          usually(
            'warm idle',
            '-12 .. 1 inH2O',
            practiceOf('petrol engine with crankcase ventilation', 'spark'),
          ),
        ],
      },
    ],
    alsoCalled: ['crankcase vacuum', 'blow-by', 'blowby', 'crankcase'],
    note: 'A vacuum in the crankcase is a negative number here.',
  },
  {
    name: 'back_pressure',
    meaning: 'Exhaust pressure before the catalyst, above the barometer',
    family: 'mechanical',
    holds: 'quantity',
    forms: [
      {
        unit: 'psi',
        kind: 'gauge',
        physical: '-5 .. 120 psi',
        usual: [
          usually('warm idle', '0 .. 1.5 psi', 'common practice, not boosted'),
          usually('2500 rpm no load', '0 .. 3 psi', 'common practice, not boosted'),
        ],
      },
    ],
    alsoCalled: ['exhaust back pressure', 'exhaust pressure', 'backpressure', 'exhaust backpressure', 'ebp'],
  },
  ...[1, 2].flatMap((bank) => [
    cam('intake', bank),
    camDesired('intake', bank),
    cam('exhaust', bank),
    camDesired('exhaust', bank),
    camDuty('intake', bank),
    camDuty('exhaust', bank),
    correlation(bank),
  ]),
  {
    name: 'timing_offset',
    meaning: 'Where a camshaft stands against its mark, in teeth of the drive',
    family: 'mechanical',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: '1', physical: '-20 .. 20' }],
    alsoCalled: ['teeth off', 'cam teeth', 'belt teeth'],
  },
  {
    name: 'valve_clearance_intake',
    meaning: 'Clearance of the intake valve',
    family: 'mechanical',
    holds: 'quantity',
    by: 'cylinder',
    forms: [{ unit: 'mm', physical: '0 .. 5 mm' }],
    alsoCalled: ['valve clearance', 'valve lash', 'intake lash', 'tappet clearance'],
  },
  {
    name: 'valve_clearance_exhaust',
    meaning: 'Clearance of the exhaust valve',
    family: 'mechanical',
    holds: 'quantity',
    by: 'cylinder',
    forms: [{ unit: 'mm', physical: '0 .. 5 mm' }],
    alsoCalled: ['exhaust lash'],
  },
];

function cam(which: 'intake' | 'exhaust', bank: number): Signal {
  return {
    name: `cam_${which}_b${bank}`,
    meaning: `Actual position of the ${which} camshaft, bank ${bank}, from its rest`,
    family: 'mechanical',
    holds: 'quantity',
    forms: [{ unit: '°CA', kind: 'difference', physical: '-180 .. 180 °CA' }],
    alsoCalled: [
      `${which} cam bank ${bank}`,
      `${which} cam position bank ${bank}`,
      `vvt ${which} bank ${bank}`,
      `actual ${which} cam bank ${bank}`,
      ...(bank === 1 ? [`${which} cam`, `${which} cam position`, `${which} vvt angle`] : []),
    ],
  };
}

function camDesired(which: 'intake' | 'exhaust', bank: number): Signal {
  return {
    name: `cam_${which}_desired_b${bank}`,
    meaning: `Position of the ${which} camshaft, bank ${bank}, that the control asks for`,
    family: 'mechanical',
    holds: 'quantity',
    forms: [{ unit: '°CA', kind: 'difference', physical: '-180 .. 180 °CA' }],
    alsoCalled: [
      `desired ${which} cam bank ${bank}`,
      ...(bank === 1 ? [`desired ${which} cam`, `${which} cam command`] : []),
    ],
  };
}

function camDuty(which: 'intake' | 'exhaust', bank: number): Signal {
  return {
    name: `cam_${which}_duty_b${bank}`,
    meaning: `Duty of the oil valve of the ${which} camshaft, bank ${bank}`,
    family: 'mechanical',
    holds: 'quantity',
    forms: [{ unit: '%', physical: '-100 .. 100 %' }],
    alsoCalled: [
      `${which} oil control valve bank ${bank}`,
      ...(bank === 1 ? [`${which} oil control valve`, `${which} vvt duty`] : []),
    ],
  };
}

function correlation(bank: number): Signal {
  return {
    name: `cam_correlation_b${bank}`,
    meaning: `How far the camshaft of bank ${bank} stands from where the crankshaft says it should`,
    family: 'mechanical',
    holds: 'quantity',
    forms: [
      {
        unit: '°CA',
        kind: 'difference',
        physical: '-180 .. 180 °CA',
        usual: [usually('warm idle', '-6 .. 6 °CA')],
      },
    ],
    alsoCalled: [
      `cam crank correlation bank ${bank}`,
      ...(bank === 1 ? ['cam crank correlation', 'cam to crank', 'cam crank offset'] : []),
    ],
  };
}
