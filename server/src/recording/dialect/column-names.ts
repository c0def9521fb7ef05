/** Takes the name of a log's column apart: `T_dry [°C]`, `RH (%)`, `Td_degF`, `p / hPa`, `T in degF`. */
export interface ColumnName {
  readonly index: number;
  /** As the first row has it. */
  readonly header: string;
  /** Without its unit, in small letters, and without anything between them or a number at its end. */
  readonly name: string;
  /** As it is spelt, where the name has one. */
  readonly unit: string | undefined;
}

const WITH_UNIT = [
  /^(.*?)\s*[[(]\s*([^\])]+?)\s*[\])]$/,
  /^(.*?)\s+\/\s*(\S+)$/,
  /^(.*?)\s+in\s+(\S+)$/,
  /^(.*?)[_ ](degC|degF|°C|°F|C|F|K|pct|percent|%|%RH|Pa|hPa|kPa|mbar|bar|psi|mps)$/i,
];

export function columnName(header: string, index: number): ColumnName {
  const match = WITH_UNIT.map((form) => form.exec(header)).find((found) => found !== null);
  const name = (match?.[1] ?? header).toLowerCase().replace(/[^a-z0-9]/g, '');
  return { index, header, name: name.replace(/\d+$/, ''), unit: match?.[2] };
}
