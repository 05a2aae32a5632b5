/** The reference page of the JSON results: what holds them together in words, their figures from the views. */
import type { Quantity } from '../basis/quantity.ts';
import { printUnit } from '../basis/units.ts';
import { QUANTITIES } from '../model/model.ts';
import { fieldsOf, keyOf, quantityOf, type View } from '../views/view.ts';
import { COIL, COIL_ITSELF, COMPARED, FEED, FUSE, LOAD, POINT, RELAY, SWEEP, WIRE } from '../views/views.ts';
import { code, grid, MADE } from './markdown.ts';

/** The keys of a row of a view. */
function keys(view: View): string {
  const rows = fieldsOf(view).map((field) => {
    const name = quantityOf(field);
    const { label, unit, flag, names }: Quantity = QUANTITIES[name];
    const holds = flag
      ? 'true or false'
      : names !== undefined
        ? `name of a ${names}`
        : unit === 'text'
          ? 'text'
          : printUnit(unit) || 'number';
    return [code(keyOf(field)), label, holds, code(name)];
  });
  return grid(['key', 'what it is', 'holds', 'quantity'], rows);
}

/** A part of the object: where it stands, what its rows are, its keys that are no quantity, and those that are. */
const part = (where: string, words: string, view: View): string =>
  `### ${code(where)}\n\n${words}\n\n${keys(view)}`;

const HEAD = `# The result as JSON

\`coilfeed size DESIGN --json\` prints one object. Numbers are in SI units but for areas (mm²) and temperatures (°C); the
unit is the last part of the key, whatever units the design is shown in. What is not known, or is without end, is
\`null\`, never a text in a number's place. Everything stands in the order of the design. More keys may come; these stay.
The last column of a table names the quantity in [quantities.md](quantities.md), with its formula and its source.

| key | holds |
| --- | --- |
| \`format\` | \`"coilfeed-result/1"\` |
| \`title\`, \`verdict\` | the design's title; \`"pass"\`, \`"fail"\` or \`"unknown"\` |
| \`findings[]\` | \`rule\` (a section of [findings.md](findings.md)), \`subject\`, \`verdict\` (\`"advice"\`, too), \`value\`, \`limit\`, \`unit\`, \`margin\`, \`marginal\`, \`text\`, \`source\`; failing first, then unknown, then advice, then passing with the least margin first |
| \`remedies[]\` | under a fail, what was tried on the whole design and mends: \`says[]\` (what to do, together), \`mends[]\` (\`rule\`, \`subject\`), \`verdict\` and \`failing\` (of the whole, with it), \`copper_kg\` and \`drop_V\` (by how much they change; where no sizes were found without it null, and \`chosen[]\` and \`copper_in_all_kg\` tell the sizes found with it), \`parts[]\` (added) |
| \`alternatives[]\` | only with \`--alternatives\`: \`name\`, \`what\` was evaluated in words, \`verdict\`, \`failing[]\` (\`rule\`, \`subject\`), \`runs[]\` (\`run\`, and size, lengths, fuse, relay), \`totals\` as below |
| \`own[]\` | \`label\`, \`formula\`, \`value\` (null where it comes to an \`error\`), \`unit\`: values of the author; of a rule \`must_be\`, \`limit\`, \`verdict\`, \`words\` |
| \`assumed[]\` | \`path\`, \`value\`, \`why\`: what was taken where the design says nothing |
| \`shop\` | only where the design has a [shop’s file](shop.md): \`file\`, \`currency\`, \`price\` of wire, fuses and relays (\`total\` of what has a price, \`lines[]\` with \`what\`, \`count\`, \`unit\`, \`each\`, \`without[]\`: what has none; null without prices or sizes), \`fuses[]\` (fuses of the shop that runs get without naming one: \`run\`, \`name\`, \`alike\`: of how many with a price, of its type and rating, this one is the cheapest), \`order[]\` (where the shelf has no answer: \`wire[]\` and \`fuses[]\` with which there is one, tried; else null), \`measured[]\` (runs whose wire has the resistance that the shop measured: \`run\`, \`size\`, \`insulation\`, \`resistance_ohm_per_m\` \`at_degC\`, \`from\`), and \`used[]\` with \`path\`, \`part\`, \`name\`, \`from\` (where its values come from, or null) and \`beside[]\` (keys that the design states otherwise) |
| \`changed[]\` | only from a workbook that a person edited: \`cell\`, \`key\`, \`label\`, \`of\` (whose input it is), \`was\` and \`now\` with their units; [workbook.md](workbook.md) tells more |

Exit status: 0 judged and nothing fails, 1 judged and something fails or is unknown, 2 the design cannot be used (every
problem is listed with file:line:column and key), 3 the tool itself failed.`;

const PARTS: readonly (readonly [string, string, View])[] = [
  ['coil', '`count`, `ids[]`, and:', COIL_ITSELF],
  ['points[]', 'One coil on a stiff supply, at each operating point: `name`, and:', POINT],
  [
    'runs[]',
    'One for each conductor: `id` (`main`, or `branch.1` where a run has one for each coil), `run`, `side`, `coils[]`, `points[]` (below), `unprotected[]` (`from_A`, `to_A`: a window in which the fuse, at its slowest, is slower than the conductor), and:',
    WIRE,
  ],
  ['runs[].points[]', '`name`, and:', LOAD],
  ['fuses[]', '`run` (the conductor’s id), `rating_chosen`, and:', FUSE],
  ['relays[]', '`run`, `rating_chosen`, and:', RELAY],
  ['coils[].points[]', 'Each coil behind this feed: its `id` above, and for each point `name`, and:', COIL],
  ['sweep[]', 'One coil and the first conductor of the feed at each speed of the sweep:', SWEEP],
  ['totals', 'The whole feed:', FEED],
];

const CHECK = `## \`coilfeed check --json\`

The same object, its \`verdict\` that of rules and readings together, with one more key. Readings are in V, A and Ω.

| key | holds |
| --- | --- |
| \`check.mend[]\` | \`harm\` (\`fire\`, \`stop\`, \`damage\`, \`spark\`, \`note\`), \`subject\`, \`says\` (to the customer), \`detail\`, \`rule\` (null when readings say so), \`heat_W\` (of the conductor) and \`energy_J\` (of the weakest coil, at the \`point\` where most of it is lost), both \`now\` and \`after\` it is mended, null where it costs none or that is not known; worst first |
| \`check.readings[]\` | \`what\`, \`subject\`, \`point\`, \`instrument\`, \`unit\`, \`expected\`, \`low\`, \`high\` (what tolerances and the error of the instrument allow), \`value\`, \`stands\` (\`within\`, \`low\`, \`high\`, \`unknown\`), \`ratio\` (value over expected), \`excess_ohm\` (what the run would have too much), \`would_be\` (an instrument with which it would be within), \`text\` |
| \`check.causes[]\` | \`kind\` of part (\`wire\`, \`run\`, \`source\`, \`coil\`, \`coils\`, \`dwell\`, \`supply\`, \`instrument\`, \`reading\`), \`subject\`, \`how\` (\`resistance\`, \`thinner\`, \`ohm\`, \`henry\`, \`turns\`, \`open\`, \`dwell\`, \`supply\`, \`scale\`, \`taken\`, \`misread\`), \`or_how[]\`, \`share\` (probability, 0 to 1), its size with the ends of a band that holds nine times in ten: \`excess_ohm\`, \`low_ohm\`, \`high_ohm\`; \`off_V\`, \`low_V\`, \`high_V\`; or \`factor\`, \`low\`, \`high\`; \`heat_W\` of the excess at full load; \`or_else[]\`: the same of parts that the readings cannot tell from it; \`text\` |
| \`check.nothing_wrong_share\` | probability that nothing is wrong, as far as readings tell |
| \`check.suspects[]\` | as \`causes\`: what may be wrong while nothing being wrong is possible as well |
| \`check.next\` | the reading that would tell most: where as in \`check.expected[]\`, \`gain_nat\` (information that it is expected to give), \`text\`; null when none would |
| \`check.unseen[]\` | what these readings would not show: \`kind\`, \`subject\`, \`how\`, \`smallest\` (the least that would: Ω of a resistance, V of the supply, a factor of the others; null when nothing would), \`heat_W\` and \`drop_V\` of such a resistance |
| \`check.no_diagnosis\` | why nothing was weighed; null when it was |
| \`check.expected[]\` | every place where something can be read: \`what\`, \`subject\`, \`point\`, \`instrument\`, \`unit\`, \`expected\`, \`low\`, \`high\`, \`probes\`, \`set_to\` |
| \`check.unknown[]\` | \`path\`, \`kind\`, \`run\`, \`consistent[]\` (what readings leave, null without one), \`offered[]\` (with which all passes), \`decides[]\` (\`rule\`, \`subject\`), \`look\`; the one that decides most first |
| \`check.tolerances_assumed[]\` | \`path\`, \`value\`, \`why\` |`;

const COMPARE = `## \`coilfeed compare --json\`

\`format\` is \`"coilfeed-compare/1"\`. Pairs are lists of two, in the order of the sides.

| key | holds |
| --- | --- |
| \`sides[]\` | \`name\`, \`title\`, \`verdict\` |
| \`alone\` | names of the points that only one has, as a pair of lists |
| \`parts\` | a pair of lists of texts |
| \`totals\` | the keys of \`totals\` above, as pairs |
| \`gain\` | what the second feed gives that the first does not, in one sentence; null where no energy is known |
| \`findings\` | \`vanish[]\`, \`appear[]\`, \`stay[]\`: \`rule\`, \`subjects\` (a pair of lists) that do not pass with the first only, the second only, both |

${part('points[]', 'Of the points that both have: `name`, `exact`, and as pairs:', COMPARED)}

\`exact\` is a pair by the exact currents, null where only a peak current is known of the coil: \`average_A\` of all coils, \`rms_A\` and
\`peak_A\` of the first conductor, \`supply_V\`, \`energy_J\` and \`energy_kept\` of the weakest firing, \`power_W\`, \`heat_W\`.`;

/** Text of `docs/result.md`. */
export const resultPage = (): string =>
  `${[MADE, HEAD, ...PARTS.map((of) => part(...of)), CHECK, COMPARE].join('\n\n')}\n`;
