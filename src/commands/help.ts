/**
 * What the commands are called and how they are used. Words only: help must not load what a command needs.
 */

interface Words {
  /** One line, as the overview prints it. */
  readonly summary: string;
  /** What follows `coilfeed` on the command line. */
  readonly call: string;
  /** The rest of the command's help; lines of at most 80 columns. */
  readonly text: string;
  /** Whether its exit status tells how the feed was judged, and not only that something was made. */
  readonly judges?: true;
}

/** Options that several commands take. */
const SHOP = `  --shop FILE      the shop's own file of parts, stock and prices, in place of
                   the one that the design names`;
const SET = `${SHOP}
  --set PATH=VALUE
                   another value for the design, such as feed.main.length=4m or
                   feed.main.gauge=auto; may be given more than once`;
const UNITS = '  --units U        metric, us or both, in place of what the design says';
const JSON_ONLY = '  --json           print the result as JSON in place of the report';
const SHOWN = `${UNITS}\n${JSON_ONLY}`;
const FORCE = '  --force          replace FILE even when somebody edited or made it';

export const COMMANDS = {
  size: {
    summary: 'size and check the feed that a design describes',
    call: 'size DESIGN [--out FILE.xlsx] [--plots DIR] [--shop FILE] [--set PATH=VALUE]… [--units U] [--all] [--alternatives] [--workings] [--json] [--force]',
    text: `Reads the design, sizes what it leaves open, and checks everything. Where
something fails, it looks for remedies and tries each on the whole design.
DESIGN is a YAML or JSON file, or a workbook that --out made and a person edited
and saved as .xlsx; "-" reads it from standard input.

  --out FILE.xlsx  also write the whole calculation as a live workbook; named
                   FILE.ods it is made by LibreOffice, if that is installed
  --plots DIR      also write pictures into the folder, each as SVG and PNG: the
                   currents in time at each point, currents and energy over
                   speed, the time-current curves of each fuse
${SET}
${UNITS}
  --all            every figure and every finding, however long the report
  --alternatives   the same coils with one main fuse, with two sizes of wire, a
                   fuse for each bank, a fuse for each coil, and sizes that are
                   not in stock, side by side, in place of the report
${JSON_ONLY}
  --workings       show the sheets of the calculation in the workbook, too
${FORCE}`,
    judges: true,
  },
  check: {
    summary: 'judge an install as found, and the readings taken on it',
    call: 'check DESIGN [--out FILE.xlsx] [--shop FILE] [--set PATH=VALUE]… [--units U] [--workings] [--json] [--force]',
    text: `Judges an install as it was found: first what to mend, in the order of the harm
that it can do, then every reading that the design lists under "measured:", and
what explains all of them together.

  --out FILE.xlsx  also write the workbook, with a test card: where the probes
                   go, what to expect, what is acceptable, cells to fill in;
                   "check FILE.xlsx" then judges what was filled in
${SET}
${SHOWN}
  --workings       show the sheets of the calculation in the workbook, too
${FORCE}`,
    judges: true,
  },
  explain: {
    summary: 'tell where a number comes from',
    call: 'explain DESIGN QUANTITY [--at NAME]… [--depth N] [--shop FILE] [--set PATH=VALUE]… [--units U] [--json]',
    text: `Prints the tree behind a value: its formula as worked out for this design, every
value that went in, with its source, its place in the design, or why it was
assumed where the design says nothing. QUANTITY is a name, a symbol, a label or
a key of the JSON result, in one word or several, with a run, a coil or a point
among them: "ampacity main", energy_kept, "Drop, worst path".

  --at NAME        the run, conductor, coil, point or row of a table; where none
                   is named, the worst
  --depth N        levels of formulas, 3 when left out; all goes down to the
                   design everywhere
${SET}
${UNITS}
  --json           print the tree as JSON, all of it when --depth is left out`,
  },
  spread: {
    summary: 'tell how sure the result is: parts are never at their nominal values',
    call: 'spread DESIGN [--samples N] [--seed N] [--out FILE.csv] [--plots DIR] [--shop FILE] [--set PATH=VALUE]… [--units U] [--threads N] [--json] [--force]',
    text: `Works out many installs of the design, as built with the sizes that were chosen,
each with every part off by what "tolerance:" of the design allows: coils,
lengths and joints each by itself, temperatures, supply and dwell for all. Tells
how figures lie, in which share of the installs each rule holds, and what
matters most. A design that fails is spread as well.

  --samples N      installs, 10 000 when left out, at most 1 000 000
  --seed N         the same seed draws the same installs; 1 when left out
  --out FILE.csv   also write a row for each install, of 100 000 at most
  --plots DIR      also draw what matters most into the folder, as SVG and PNG
${SHOP}
  --set PATH=VALUE
                   another value for the design, such as feed.main.length=4m or
                   tolerance.length=5%; may be given more than once
  --units U        metric, us or both, in place of what the design says
  --threads N      threads to work in; as many as there are processors when left
                   out. The result is the same
  --json           print the result as JSON in place of the report
  --force          replace FILE even when somebody edited or made it

Exit status 0: all installs pass. 1: some do not. Ctrl-C ends it with what is
done, and says how many installs that are.`,
  },
  study: {
    summary: 'tell where the next size is due as one input or two vary',
    call: 'study DESIGN --vary PATH=VALUES [--vary PATH=VALUES] [--show QUANTITY]… [--out FILE]… [--shop FILE] [--set PATH=VALUE]… [--units U] [--threads N] [--json] [--force]',
    text: `Evaluates the whole design at every point of a grid over one input or two, and
says where a size, a rating or the verdict changes. A design that fails is
studied as well.

  --vary PATH=VALUES
                   a place in the design and its values: a range with its step,
                   feed.main.length="1 m..6 m/0.5 m", or a list,
                   feed.main.gauge="10 AWG, 8 AWG, 6 AWG"; at most 10 000 points
  --show QUANTITY  what to show of each point, named as for "explain", such as
                   "ampacity main"; may be given more than once; else drop,
                   energy kept, chosen sizes and ratings, copper
  --out FILE       also write the table, when FILE ends in .csv, or a picture,
                   when it ends in .svg or .png: lines over one input, a map
                   over two; may be given more than once
${SHOP}
  --set PATH=VALUE
                   another value for the design, at all points
${UNITS}
  --threads N      threads to work in; as many as there are processors when left
                   out. The result is the same
${JSON_ONLY}
${FORCE}`,
  },
  compare: {
    summary: 'set two feeds side by side',
    call: 'compare A [B] [--shop FILE] [--out FILE]… [--units U] [--json] [--force]',
    text: `Compares two designs: currents, supply and energy at the worst coil,
the dwell to restore full energy, heat in the wiring, copper,
parts, and what passes with one and not with the other. With one design its
feed is compared with the one under "original:". The exit status tells how the
second was judged.

  --out FILE       also write a workbook of the second feed, with the first one
                   beside it, when FILE ends in .xlsx; one page for a customer,
                   to print, when it ends in .html; a picture of current and
                   energy over speed for both when it ends in .svg or .png; may
                   be given more than once
${SHOP}
${SHOWN}
${FORCE}`,
    judges: true,
  },
  trace: {
    summary: 'compute the currents in time, or judge a recorded one',
    call: 'trace DESIGN --point NAME [--run ID]… [--shop FILE] [--set PATH=VALUE]… [--measured CLAMP.csv] [--save-coil NAME] [--out FILE] [--units U] [--json] [--force]',
    text: `Computes the currents of all coils over one working cycle without approximation
and says how far the closed forms of the calculation are from them.

  --point NAME     the operating point; may be left out when there is only one
  --run ID         only this run or conductor, such as main or branch.1; may be
                   given more than once
  --out FILE       also write the waveforms: as a picture when FILE ends in
                   .svg or .png; when it ends in .csv as a table of crank
                   angle, time, current of each conductor and supply at each
                   coil, with two rows for an instant of switching: before
                   and after
${SET}
  --supply VALUE   a supply other than that of the point, such as "13.8 V"
${SHOWN}
${FORCE}

  --measured CLAMP.csv
                   judge a recording of a current clamp around the wire of one
                   coil: a table of times and amperes or volts, as instruments
                   export it. Gives resistance and inductance, dwell, peak and
                   the knee beside the computed ones. --run names the wire,
                   --out writes both curves. What the headings do not say
                   has to be given:
  --column C       the column of the clamp, by its number or its heading
  --scale FACTOR   what the clamp gives for an ampere: 100mV/A, 0.1V/A, 10A/V;
                   10A/A where the instrument shows ten amperes for one
  --time-column C  the column of the times, by its number or its heading
  --interval TIME  time from one sample to the next, such as 10us, where the
                   file has no times, or has them rounded
  --save-coil NAME
                   add the coil that was measured to the file of --shop, its
                   resistance without that of the feed and at 20 degC`,
  },
  design: {
    summary: 'write the design of an edited workbook as YAML',
    call: 'design FILE [--shop FILE] [--out FILE.yaml] [--force]',
    text: `Takes the inputs from a workbook that coilfeed made and a person edited and
saved as .xlsx, says what was changed, and writes the design as YAML: the text
that the workbook was made from, comments and all, with the changed values.
A design in JSON is written as YAML as well.

  --out FILE.yaml  write to FILE and not to standard output
${SHOP}
  --force          replace FILE when it exists already`,
  },
  kit: {
    summary: 'write the papers of a wiring kit: parts, cuts, diagram, instructions',
    call: 'kit DESIGN --out DIR [--shop FILE] [--set PATH=VALUE]… [--batch N] [--serials LIST] [--words FILE] [--bom] [--ascii] [--force]',
    text: `Writes what the shop and its customer need on paper into DIR: parts list,
cut list, bench sheet, wiring diagram, labels, instructions with test card, a
build record for each serial number, and a workbook with the same as sheets.
The block "kit" of the design gives allowances, colours and terminals; what it
leaves out stays blank. Every paper of a design that fails says that it fails.

  --out DIR        folder for the papers; made when it is not there
${SET}
  --batch N        kits made at a time: parts, reels and labels are counted for
                   all of them; as many as there are serial numbers when left
                   out, else 1
  --serials LIST   one number for each kit, A001-A025 or A001,A007: a page of
                   the build record and a label for each; as many as --batch
                   says
  --words FILE     your own words for the instructions, in YAML; names in braces
                   stand for values of the design, numbers stay as they are
  --bom            tables with a byte order mark, for a spreadsheet program that
                   takes them for another alphabet without
  --ascii          tables without signs beyond ASCII: -> for an arrow
  --force          replace files even when somebody edited or made them`,
    judges: true,
  },
  page: {
    summary: 'write the whole tool as one page for a browser',
    call: 'page [DESIGN] --out FILE.html [--shop FILE] [--force]',
    text: `Writes the bench page: one file that opens from disk, offline, and runs the same
calculation in the browser. Change any input and the feed is sized again at
once. The page opens with DESIGN, a design file or a workbook, or with a demo
when it is left out. Nothing leaves the machine.

  --out FILE.html  the file to write
${SHOP}
${FORCE}`,
  },
  shop: {
    summary: 'list and judge a shop’s own file of parts, stock and prices',
    call: 'shop FILE [--json]',
    text: `Lists what is in a shop's file, and what in it contradicts itself: a coil whose
bench test draws more than its resistance lets through, a fuse whose curve
rises, a terminal without a crimp for a size within its range, a measured
resistance that is not that of its size, wire listed at two prices.

  --json           print the same as JSON

Exit status 0: nothing is doubtful. 1: something is.`,
  },
  new: {
    summary: 'write a design, or a shop’s file, to start from',
    call: 'new [FILE] [--cylinders N] [--stroke 2|4] [--layout L] [--order LIST] [--shop FILE] [--coil NAME] [--ask] [--shop-file] [--force]',
    text: `Writes a commented design to FILE, or to standard output when no FILE is named.
It can be sized as it is. With one of the answers below it is for that engine.

  --cylinders N    number of cylinders, 4 when left out
  --stroke 2|4     4 when left out
  --layout L       coil_per_cylinder, wasted_coil_per_cylinder, coil_per_pair or
                   single_coil
  --order LIST     firing order, 1-8-4-3-6-5-7-2; left out: a usual one, with
                   the others as a comment
  --shop FILE      the shop's own file that the design is to name
  --coil NAME      a coil of it
  --ask            ask for what is not given, on a terminal
  --shop-file      write a shop's file to start from, and no design
  --force          replace FILE when it exists already`,
  },
  help: {
    summary: 'show this help, or that of one command',
    call: 'help [COMMAND]',
    text: 'Shows the list of commands, or how one of them is used.',
  },
} as const satisfies Record<string, Words>;

export type CommandName = keyof typeof COMMANDS;

export const isCommand = (name: string): name is CommandName => Object.hasOwn(COMMANDS, name);

const STATUSES = `Exit status:
  0  judged, and nothing fails
  1  judged, and something fails or is unknown
  2  the design or the call cannot be used
  3  the tool itself failed`;

/** The list of commands, ends with a line break. */
export function overview(version: string): string {
  const names = Object.keys(COMMANDS) as CommandName[];
  const wide = Math.max(...names.map(({ length }) => length)) + 2;
  const lines = names.map((name) => `  ${name.padEnd(wide)}${COMMANDS[name].summary}`);
  return `coilfeed ${version} - sizes and checks the power feed of ignition coils

Usage: coilfeed COMMAND [ARGUMENTS]

${lines.join('\n')}

"coilfeed help COMMAND" tells more, "coilfeed --version" prints the version.

${STATUSES}
`;
}

/** Of a command that only makes something, or says that it cannot. */
const DONE = STATUSES.replace(/ {2}0 .*\n {2}1 .*\n/, '  0  done\n');

/** How one command is used, ends with a line break. */
export function usage(name: CommandName): string {
  const { call, text, judges }: Words = COMMANDS[name];
  return `${wrap(`Usage: coilfeed ${call}`)}\n\n${text}\n\n${judges ? STATUSES : DONE}\n`;
}

/** Breaks a message into lines of at most 80 columns; a longer word (a path) stays whole. */
export function wrap(message: string): string {
  const lines: string[] = [];
  for (const paragraph of message.split('\n')) {
    let line = '';
    for (const word of paragraph.split(' ')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (longer.length > 80 && line !== '') {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    lines.push(line);
  }
  return lines.join('\n');
}
