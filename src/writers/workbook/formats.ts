/** Number formats: as many digits as matter in the unit. */

const FORMATS: Readonly<Record<string, string>> = {
  V: '0.00',
  mV: '0.0',
  A: '0.0',
  'A*s': '0.00000',
  'A^2*s': '0.00000',
  'A*m': '0.0',
  ohm: '0.00000',
  mohm: '0.00',
  'ohm/m': '0.000000',
  'mohm/m': '0.000',
  H: '0.000000',
  mH: '0.000',
  J: '0.0000',
  mJ: '0.0',
  s: '0.000000',
  ms: '0.00',
  rpm: '0',
  Hz: '0.0',
  deg: '0.0',
  degC: '0',
  K: '0',
  degF: '0',
  'mm^2': '0.00',
  mm: '0.0',
  m: '0.00',
  ft: '0.00',
  in: '0.0',
  kg: '0.000',
  g: '0',
  oz: '0.0',
  lb: '0.00',
  W: '0.00',
  uF: '0.0',
  '%': '0.0',
  // A time that may be without end, for which `no_end` stands.
  time: '[>=1000000000]"never";[>=100]0;0.000',
  // Lengths of a kit, with as many decimals as its papers.
  'cut mm': '0',
  'cut in': '0.00',
  'crimp mm': '0.00',
  'crimp in': '0.000',
  'reel ft': '0.0',
  N: '0',
  lbf: '0.0',
  // Words for what is no unit: a plain count, and a value of any unit.
  count: '0',
  exact: 'General',
  /** A length as it is entered: of one in meters no more digits are of use. */
  entered_in: '0.0###',
  margin: '0.0',
  // In parts by size LibreOffice would lose the sign of what is below 0.
  any: '0.00',
};

/** For what is not listed the program shows as many digits as the cell has room for. */
export const formatOf = (unit: string | undefined): string => FORMATS[unit ?? ''] ?? 'General';
