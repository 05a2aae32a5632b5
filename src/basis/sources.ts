/**
 * The one list of sources. A citation is a key into it, a place in the source, and how the value was seen.
 */

/** How a published value was seen: in a copy of the source, quoted by a second publication, or remembered. */
export type Status =
  | 'printed'
  | 'quoted'
  | 'from memory'
  | 'calculated'
  | 'common practice'
  | 'arbitrary'
  | 'physics'
  | 'definition'
  | 'design';

export interface Source {
  /** What it is about, in our own short words; the designation below is what identifies it. */
  readonly title: string;
  /** Publisher, designation and edition. No edition stands here unless it is known. */
  readonly publisher: string;
}

export const SOURCES = {
  // Copper and conductors
  'IEC-60028': { title: 'International standard of resistance for copper', publisher: 'IEC 60028' },
  'ASTM-B258': { title: 'Diameters and areas of AWG sizes of solid round wire', publisher: 'ASTM B258' },
  NEC: { title: 'National Electrical Code', publisher: 'NFPA 70' },
  'SAE-J1127': { title: 'Low-voltage battery cable for road vehicles', publisher: 'SAE J1127' },
  'SAE-J1128': { title: 'Low-voltage primary cable for road vehicles', publisher: 'SAE J1128 DEC2020' },
  'IEC-60228': { title: 'Conductors of insulated cables', publisher: 'IEC 60228' },
  'AWG-handbook': {
    title: 'Handbook table of solid copper wire, AWG',
    publisher: 'handbook table, not named',
  },
  'ISO-6722-1': { title: 'Single-core cables of road vehicles, copper', publisher: 'ISO 6722-1:2011' },
  'ISO-19642': { title: 'Cables of road vehicles', publisher: 'ISO 19642' },

  // Current in wires, heat, short circuit
  '33-CFR-183.425': {
    title: 'Conductors of boats, allowable amperage below 50 V (US federal regulation)',
    publisher: '33 CFR 183.425, as of July 1, 2001',
  },
  '33-CFR-183.455': {
    title: 'Overcurrent protection of boats (US federal regulation)',
    publisher: '33 CFR 183.455, as of July 1, 2001',
  },
  'FAA-AC-43.13-1B': {
    title: 'Acceptable methods of aircraft inspection and repair, ch. 11 electrical systems',
    publisher: 'FAA AC 43.13-1B CHG 1 (9/27/01)',
  },
  'FAA-handbook': { title: 'Handbook for aircraft mechanics', publisher: 'FAA maintenance handbook' },
  'MIL-W-5088L': { title: 'Wiring of aerospace vehicles', publisher: 'MIL-W-5088L' },
  'IEC-60364-5-54': { title: 'Earthing arrangements and protective conductors', publisher: 'IEC 60364-5-54' },
  'IEC-60949': { title: 'Thermally permissible short-circuit currents', publisher: 'IEC 60949' },
  'Churchill-Chu': { title: 'Free convection around a horizontal cylinder', publisher: 'Churchill and Chu' },
  'Bergman-Incropera': { title: 'Heat and mass transfer, a textbook', publisher: 'Bergman/Incropera' },
  Preece: { title: 'Fusing current of a wire in free air', publisher: 'Preece' },
  Onderdonk: { title: 'Fusing time of a wire without loss of heat', publisher: 'Onderdonk' },

  // Fuses, relays, joints, drop
  'ISO-8820-3': {
    title: 'Fuse-links of road vehicles, blade types C, E and F',
    publisher: 'ISO 8820-3:2015',
  },
  'ISO-8820-5': {
    title: 'Fuse-links of road vehicles, strip types SF 30 and SF 51',
    publisher: 'ISO 8820-5',
  },
  'ISO-7588-1': { title: 'Relays of road vehicles, changeover and make contacts', publisher: 'ISO 7588-1' },
  'IEC-61210': { title: 'Flat quick-connect terminations', publisher: 'IEC 61210' },
  'DIN-72552': { title: 'Terminal numbers of road vehicles', publisher: 'DIN 72552' },
  'ABYC-E-11': { title: 'Electrical systems on boats', publisher: 'ABYC E-11' },
  'UL-486A': { title: 'Wire connectors', publisher: 'UL 486A' },
  'MIL-T-7928': { title: 'Crimped terminals and splices', publisher: 'MIL-T-7928' },
  'NASA-STD-8739.4': { title: 'Crimping, cables, harnesses and wiring', publisher: 'NASA-STD-8739.4' },

  // Supply, climate, ignition primary
  'SAE-J537': { title: 'Storage batteries', publisher: 'SAE J537' },
  'ISO-16750-2': { title: 'Electrical loads on equipment of road vehicles', publisher: 'ISO 16750-2' },
  'ISO-16750-4': { title: 'Climatic loads on equipment of road vehicles', publisher: 'ISO 16750-4' },
  'Alexander-Sadiku': { title: 'Fundamentals of Electric Circuits', publisher: 'Alexander and Sadiku' },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;

export interface Citation {
  readonly key?: SourceKey;
  readonly where?: string;
  readonly status: Status;
  /** How sure the memory is; only with the status "from memory". */
  readonly confidence?: Confidence;
}

export type Confidence = 'high' | 'medium' | 'low';

/** A published value: key of the source, how it was seen, and the place in it. */
export const cite = (key: SourceKey, status: Status, where?: string): Citation => ({
  key,
  status,
  ...(where === undefined ? {} : { where }),
});

/** A remembered value, not seen in print: how sure, and where it should stand, if that is known. */
export const fromMemory = (confidence: Confidence, key?: SourceKey, where?: string): Citation => ({
  status: 'from memory',
  confidence,
  ...(key === undefined ? {} : { key }),
  ...(where === undefined ? {} : { where }),
});

/** Values without a publication: common practice, an arbitrary choice of ours, plain physics or arithmetic. */
export const COMMON_PRACTICE: Citation = { status: 'common practice' };
export const ARBITRARY: Citation = { status: 'arbitrary' };
export const PHYSICS: Citation = { status: 'physics' };
/** A choice of words or of bookkeeping: what a quantity is called here, a count, a unit turned. Nothing is claimed. */
export const DEFINITION: Citation = { status: 'definition' };
/** The design itself says so: a data sheet of a part, or a limit of the author's. */
export const AS_STATED: Citation = { status: 'design' };
/** Read in a second publication that does not name the first: no key, and none is made up. */
export const QUOTED: Citation = { status: 'quoted' };

/** A citation as it is printed beside a value: where it stands, and how it was seen. */
export function printCitation({ key, where, status, confidence }: Citation): string {
  if (key === undefined) {
    const seen = confidence === undefined ? '' : `, ${confidence} confidence`;
    if (status === 'quoted') return 'quoted, source not named';
    return status === 'design' ? 'as the design states' : `${status}${seen}`;
  }
  const seen = confidence === undefined ? status : `${status}, ${confidence} confidence`;
  const source: Source = SOURCES[key];
  return `${source.publisher}${where === undefined ? '' : `, ${where}`} (${seen})`;
}

/** The same before those who only use the result: what is arbitrary says who chose it. */
export const plainCitation = (of: Citation): string =>
  of.status === 'arbitrary' ? 'chosen by this tool' : printCitation(of);
