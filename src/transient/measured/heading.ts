/** What the words above a column say: its unit, and what it is likely to hold. */

export const TIME_UNITS = { s: 1, ms: 1e-3, us: 1e-6, ns: 1e-9, min: 60 } as const;
export type TimeUnit = keyof typeof TIME_UNITS;

export type Unit =
  | { readonly kind: 'time'; readonly symbol: TimeUnit }
  /** `factor` leads to volts or amperes. */
  | { readonly kind: 'current' | 'voltage'; readonly symbol: string; readonly factor: number }
  | { readonly kind: 'other'; readonly symbol: string };

export interface Heading {
  /** As written, names and units of several lines joined; '' where there is nothing. */
  readonly title: string;
  readonly unit: Unit | null;
  /** What the words speak of; null for words such as CH1 or none. */
  readonly word: 'time' | 'index' | 'current' | 'trigger' | 'other' | null;
}

const SECONDS: Readonly<Record<string, TimeUnit>> = {
  s: 's',
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  sekunde: 's',
  sekunden: 's',
  ms: 'ms',
  msec: 'ms',
  millisecond: 'ms',
  milliseconds: 'ms',
  us: 'us',
  usec: 'us',
  microsecond: 'us',
  microseconds: 'us',
  ns: 'ns',
  nsec: 'ns',
  nanosecond: 'ns',
  nanoseconds: 'ns',
  min: 'min',
  minute: 'min',
  minutes: 'min',
};
const LARGE: Readonly<Record<string, number>> = { k: 1e3, m: 1e-3, milli: 1e-3, u: 1e-6, micro: 1e-6, '': 1 };
const OTHER =
  /^(%|°|deg|degrees?|°c|°f|degc|degf|c|rpm|1\/min|min-1|k?hz|bar|kpa|psi|km\/h|mph|k?w|watts?|m?ohms?|mω|ω|db|g|bits?|counts?|raw)$/;

/** A unit by itself, whatever its capitals: `mA`, `Volt`, `µs`. */
export function unitOf(text: string): Unit | null {
  const small = text.trim().toLowerCase().replace(/[µμ]/g, 'u').replace(/\.$/, '');
  if (Object.hasOwn(SECONDS, small)) return { kind: 'time', symbol: SECONDS[small] as TimeUnit };
  const [, size = '', amperes] = /^(k|m|milli|u|micro|)(?:(a|amps?|amperes?)|v|volts?)$/.exec(small) ?? [];
  if (small !== '' && /^(k|m|milli|u|micro|)(a|amps?|amperes?|v|volts?)$/.test(small)) {
    const factor = LARGE[size] as number;
    const prefix = size === 'milli' ? 'm' : size === 'micro' ? 'u' : size;
    return amperes === undefined
      ? { kind: 'voltage', symbol: `${prefix}V`, factor }
      : { kind: 'current', symbol: `${prefix}A`, factor };
  }
  return OTHER.test(small) ? { kind: 'other', symbol: text.trim() } : null;
}

/** Words of English, and a few of other languages. */
const WORDS = [
  [
    'index',
    /^(#|n|no\.?|nr\.?|num|number|samples?|sample (no|nr|number|index)\.?|index|idx|points?|rows?|records?|count|counter|line)$/,
  ],
  ['time', /\b(time|timestamp|elapsed|zeit|temps|tempo|tiempo|tijd|tid)\b|^t$/],
  ['current', /\b(currents?|amps?|amperes?|amperage|clamp|strom|courant|corrente|corriente|stroom|i\d?)\b/],
  [
    'trigger',
    /\b(trig\w*|sync|ign|ignition|igt|tach\w*|cam|crank|ckp|cmp|hall|digital|logic|markers?|events?|command|cmd|gate|ext|status|flags?|d\d+)\b/,
  ],
  ['other', /\b(battery|supply|vbatt?|ubatt?|rpm|speed|temp\w*|pressure|throttle|tps|afr|lambda|map)\b/],
] as const;

/** A single letter behind one of these is a name: Channel A, Bank A. */
const NAMED =
  /\b(ch|chan|channel|kanal|input|probe|bank|coil|plug|port|sensor|trace|line|cyl|cylinder|unit|side|scope)$/;

/** Reads a heading, `I (A)`, `Current [mA]`, `CH1 / V`, `time_ms`, and the unit of a line below it when there is one. */
export function headingOf(name: string, below = ''): Heading {
  const title = [name, below].filter((text) => text !== '').join(' ');
  const plain = name.replace(/[_.]/g, ' ').replace(/\s+/g, ' ').trim();
  const inBrackets = [...plain.matchAll(/[[({<]\s*([^\])}>]+?)\s*[\])}>]/g)].map(([, text]) =>
    unitOf(text as string),
  );
  const unit = bare(below) ?? inBrackets.findLast((one) => one !== null) ?? behind(plain);
  const words = plain
    .toLowerCase()
    .replace(/[[({<].*$/, '')
    .replace(/\/.*$/, '')
    .trim();
  const word = WORDS.find(([, pattern]) => pattern.test(words))?.[0] ?? null;
  return { title, unit, word: unit === null && /^a$/i.test(plain) ? 'current' : word };
}

/** A unit that stands by itself, perhaps in brackets. */
export const bare = (text: string): Unit | null => unitOf(text.replace(/^\s*[[({<]\s*|\s*[\])}>]\s*$/g, ''));

/** A unit behind a word or a sign: `CH1 / V`, `Strom in A`, `clamp mA`. */
function behind(plain: string): Unit | null {
  const [, before = '', sign = '', last = ''] =
    /^(.*?)(\s*[/,:]\s*|\s+(?:in|-)\s+|\s+)(\S+)$/.exec(plain) ?? [];
  const unit = last === '' ? wholly(plain) : unitOf(last);
  const lone = last.length === 1 && sign.trim() === '';
  return unit === null || (lone && NAMED.test(before.toLowerCase())) ? null : unit;
}

/** A heading that is nothing but a unit; a lone letter may as well be the name of a channel. */
const wholly = (plain: string): Unit | null => (/^[avc]$/i.test(plain) ? null : unitOf(plain));
