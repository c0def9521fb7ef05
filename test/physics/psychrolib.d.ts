/** The calls of psychrolib 1.1.1 that the tests compare with; SI units, angles of temperature in °C, pressure in Pa. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetVapPresFromRelHum(celsius: number, relativeHumidity: number): number;
    GetTDewPointFromVapPres(celsius: number, vapourPressure: number): number;
    GetTDewPointFromRelHum(celsius: number, relativeHumidity: number): number;
    GetTWetBulbFromHumRatio(celsius: number, mixingRatio: number, pressure: number): number;
    GetHumRatioFromTWetBulb(celsius: number, wetBulbCelsius: number, pressure: number): number;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pressure: number): number;
    GetHumRatioFromVapPres(vapourPressure: number, pressure: number): number;
    GetVapPresFromHumRatio(mixingRatio: number, pressure: number): number;
    GetSpecificHumFromHumRatio(mixingRatio: number): number;
    GetMoistAirEnthalpy(celsius: number, mixingRatio: number): number;
    GetMoistAirDensity(celsius: number, mixingRatio: number, pressure: number): number;
    GetStandardAtmPressure(metres: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
