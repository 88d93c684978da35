/** The part of psychrolib that the tests use, SI units after `SetUnitSystem(SI)`. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Pa at an altitude in m (geopotential). */
    GetStandardAtmPressure(altitude: number): number;
    /** Pa at °C. */
    GetSatVapPres(temperature: number): number;
    /** kg of water per kg of dry air from °C, 0–1, Pa. */
    GetHumRatioFromRelHum(temperature: number, relativeHumidity: number, pressure: number): number;
    /** kg/m³ from °C, kg/kg, Pa. */
    GetMoistAirDensity(temperature: number, humidityRatio: number, pressure: number): number;
    /** 0–1 from °C, kg/kg, Pa. */
    GetRelHumFromHumRatio(temperature: number, humidityRatio: number, pressure: number): number;
  }
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
