/**
 * Checks between inputs, as the reader of a design makes them (`src/design/checks-*.ts`), and of what the layout of the
 * workbook is made for: another layout needs another workbook.
 */
import type { At } from '../../basis/quantity.ts';
import { HIGHEST_SYSTEM } from '../../design/by-system.ts';
import type { Design } from '../../design/design.ts';
import { LIKE_NONE } from '../../design/names.ts';
import type { QuantityName } from '../../model/model.ts';
import { A_THIRD, couldBeAlike } from '../../model/route.ts';
import { ANEW, type Check } from './check.ts';

/** Cells as formulas name them: of an entry as it is, and of its value in the unit of the model, a word as the design holds it. */
export interface Cells {
  entry(name: QuantityName, at?: At): string;
  value(name: QuantityName, at?: At): string;
  /** All values of a column of a table. */
  all(name: QuantityName): string;
}

/** 1 where both are known and the first is not below the second. */
const notBelow = (a: string, b: string): string =>
  `IF(ISNUMBER(${a}),IF(ISNUMBER(${b}),IF(${a}>=${b},1,0),0),0)`;

export function between(design: Design, cells: Cells): Check[] {
  return [
    ...coil(design, cells),
    ...points(design, cells),
    ...resting(design, cells),
    ...timing(design, cells),
    ...sizes(design, cells),
    ...devices(design, cells),
    ...places(design, cells),
  ];
}

function coil(design: Design, { entry, value }: Cells): Check[] {
  const ways = ['coil_L_given', 'peak_alone'] as const;
  const test = ['test_supply', 'test_dwell', 'test_peak'] as const;
  const given = (name: QuantityName): string => `IF(${entry(name)}="",0,1)`;
  const tested = `IF(${[...test, 'test_T' as const].map(given).join('+')}>0,1,0)`;
  const supplies = design.points.map((_, point) => value('point_supply', { point }));
  const highest = `MAX(${[...supplies, ...(design.sweep === null ? [] : [value('sweep_supply')])].join()})`;
  // The resistance is that at 20 °C; the value of the load is worked out by the model.
  return [
    {
      name: 'coil_L_given',
      at: {},
      wrong: `IF(${ways.map(given).join('+')}+${tested}=1,0,1)`,
      takes: 'takes exactly one of inductance, bench test and peak',
    },
    ...test.map(
      (name): Check => ({
        name,
        at: {},
        wrong: `IF(${tested}=1,IF(#="",1,0),0)`,
        takes: 'takes a value: supply, dwell and peak of the bench test go together',
      }),
    ),
    {
      name: 'test_peak',
      at: {},
      wrong: `IF(${tested}=1,IFERROR(IF(test_peak*coil_ohm_20*(1+alpha_20*(IF(ISNUMBER(test_T),test_T,T_ref)-T_ref))>=test_supply-driver_drop,1,0),0),0)`,
      takes: 'takes less: that supply cannot drive such a current through the coil',
    },
    {
      name: 'peak_alone',
      at: {},
      wrong: `IF(ISNUMBER(#),IFERROR(IF(#>(${highest}-driver_drop)/(coil_ohm_20*(1+alpha_20*(coil_T-T_ref))),1,0),0),0)`,
      takes: 'takes less: the highest supply cannot drive such a current through the coil',
    },
    {
      name: 'cold_cranking',
      at: {},
      wrong: `IF(#="",0,IF(${entry('source_given')}="",0,1))`,
      takes: 'takes nothing beside a resistance of the source: give one of the two',
    },
  ];
}

/** Above the supplies of the systems that there are relays for nothing is known of the battery at rest. */
function resting({ runs, points }: Design, { value }: Cells): Check[] {
  const closes = runs.flatMap(({ relay }, run) =>
    relay === null ? [] : [`IF(${value('relay_closes', { run })}="before cranking",1,0)`],
  );
  if (closes.length === 0) return [];
  const supplies = points.map((_, point) => value('point_supply', { point })).join();
  return [
    {
      name: 'resting',
      at: {},
      wrong: `IF(#="",IF(MAX(${supplies})>${HIGHEST_SYSTEM},0,IF(${closes.join('+')}>0,1,0)),0)`,
      takes: 'takes a voltage, since a relay closes before cranking',
    },
  ];
}

function points(design: Design, { entry, value }: Cells): Check[] {
  const low = 'takes more than the driver drop, or no coil charges';
  return [
    ...design.points.flatMap((_, point): Check[] => [
      { name: 'point_supply', at: { point }, wrong: `IF(ISNUMBER(#),IF(#>driver_drop,0,1),0)`, takes: low },
      {
        name: 'point_dip',
        at: { point },
        wrong: notBelow('#', value('point_supply', { point })),
        takes: 'takes less than the supply of the point',
      },
    ]),
    ...(design.sweep === null
      ? []
      : [
          {
            name: 'sweep_supply',
            at: {},
            wrong: 'IF(ISNUMBER(#),IF(#>driver_drop,0,1),0)',
            takes: low,
          } as const,
          {
            name: 'sweep_step',
            at: {},
            wrong: `IFERROR(IF(${entry('sweep_from')}+${design.sweep.rows - 1}*#>30000,1,0),0)`,
            takes: 'takes less: the last speed would be above 30000 rpm',
          } as const,
        ]),
  ];
}

function timing(design: Design, { entry }: Cells): Check[] {
  const rows = design.ignition.dwell.length;
  const table = Array.from({ length: rows }, (_, dwell_row): Check => {
    const before = dwell_row === 0 ? null : entry('dwell_supply', { dwell_row: dwell_row - 1 });
    return {
      name: 'dwell_supply',
      at: { dwell_row },
      wrong:
        rows === 1
          ? '0'
          : before === null
            ? 'IF(#="",1,0)'
            : `IF(ISNUMBER(#),IF(ISNUMBER(${before}),IF(#>${before},0,1),0),1)`,
      takes: 'takes a supply above that of the row before: the rows rise',
    };
  });
  return [...table, ...angles(design, entry)];
}

/** Angles rise along the list that a design gives them in: of each listed coil, else of the engine. */
function angles(design: Design, entry: Cells['entry']): Check[] {
  const { layout } = design.ignition;
  const angle = (event: number): string => entry('event_angle', { event });
  const first = ({ coil, angle: at }: Design['events'][number]): boolean =>
    layout !== 'wasted_coil_per_cylinder' || design.engine.firing_angles[coil] === at;
  const checks = design.events.flatMap((own, event): Check[] => {
    const at = { event };
    const partner = design.events.findIndex(
      (other) => other.coil === own.coil && other !== own && (layout === 'coil_per_pair' || first(other)),
    );
    const before = first(own)
      ? design.events
          .slice(0, event)
          .findLastIndex((other) => first(other) && (layout !== 'listed' || other.coil === own.coil))
      : -1;
    return [
      {
        name: 'event_angle',
        at,
        wrong: `IFERROR(IF(#>=180*stroke,1,${before < 0 ? '0' : `IF(#>${angle(before)},0,1)`}),1)`,
        takes: 'takes an angle within the cycle, above that of the firing before',
      },
      ...((layout === 'coil_per_pair' || !first(own)) && partner >= 0
        ? [
            {
              name: 'event_angle',
              at,
              wrong: `IFERROR(IF(ABS(ABS(#-${angle(partner)})-360)<0.000001,0,1),1)`,
              takes: 'takes an angle 360 degrees from the other spark of the coil',
            } as const,
          ]
        : []),
    ];
  });
  const last = design.events.length - 1;
  return [
    ...checks,
    {
      name: 'event_angle',
      at: { event: last },
      wrong: 'IF(intervals_missing>0,1,0)',
      takes: `and all others, with as many different intervals as there were: ${ANEW}`,
    },
  ];
}

function sizes(design: Design, { entry, value, all }: Cells): Check[] {
  const series = value('series');
  const checks: Check[] = [
    {
      name: 'smallest',
      at: {},
      // Each series has a name of three letters, the last of a size.
      wrong: `IF(RIGHT(${value('smallest')},3)=${series},0,1)`,
      takes: 'takes a size of the series',
    },
  ];
  const stock = design.sizes.stock?.[0]?.split(' ')[1];
  if (stock !== undefined)
    checks.push({
      name: 'series',
      at: {},
      wrong: `IF(${series}="${stock}",0,1)`,
      takes: `takes ${stock}, the series of the sizes in stock`,
    });
  const auto = (run: number): string => `IF(${value('run_gauge', { run })}="auto",1,0)`;
  design.runs.forEach((own, run) => {
    const [low, high] = [value('run_smallest', { run }), value('run_largest', { run })];
    checks.push({
      name: 'run_largest',
      at: { run },
      wrong:
        `IF(#="",0,IF(${entry('run_smallest', { run })}="",0,IF(RIGHT(${low},3)=RIGHT(${high},3),` +
        `IFERROR(IF(MATCH(${low},${all('size_name')},0)>MATCH(${high},${all('size_name')},0),1,0),0),0)))`,
      takes: 'takes a size not below the smallest',
    });
    const gauge = value('run_gauge', { run });
    const like = design.runs.findIndex(({ name }) => name === own.like);
    if (like >= 0 && own.gauge === design.runs[like]?.gauge)
      checks.push({
        name: 'run_gauge',
        at: { run },
        wrong: `IF(${gauge}=${value('run_gauge', { run: like })},0,1)`,
        takes: `takes what the run ${design.runs[like]?.name} has: it is to be like that one`,
      });
    if (own.like !== null && own.like !== LIKE_NONE) return;
    for (let before = 0; before < run; before++) {
      if (!couldBeAlike(before, run, design)) continue;
      const mean = (of: number): string =>
        `SUM(${design.wires.flatMap((w, wire) => (w.run === of ? [value('wire_length', { wire })] : [])).join()})/${design.wires.filter((w) => w.run === of).length}`;
      const [a, b] = [mean(before), mean(run)];
      const now =
        `IF(${auto(before)}*${auto(run)}=1,IF(${value('run_insulation', { run: before })}=${value('run_insulation', { run })},` +
        `IFERROR(IF(ABS(${a}-(${b}))<=MAX(${a},${b})*${A_THIRD},1,0),0),0),0)`;
      checks.push({
        name: 'run_gauge',
        at: { run },
        wrong: `IF(${now}=${isAlike(design, before, run) ? 1 : 0},0,1)`,
        takes: `and its length and insulation decide whether it has one size with ${design.runs[before]?.name}: ${ANEW}`,
      });
    }
  });
  return checks;
}

function isAlike(design: Design, a: number, b: number): boolean {
  const [one, other] = [design.runs[a], design.runs[b]];
  const mean = (run: number): number => {
    const own = design.wires.filter((w) => w.run === run);
    return own.reduce((sum, w) => sum + w.length, 0) / own.length;
  };
  return (
    one?.gauge === 'auto' &&
    other?.gauge === 'auto' &&
    one.insulation === other.insulation &&
    Math.abs(mean(a) - mean(b)) <= A_THIRD * Math.max(mean(a), mean(b))
  );
}

function devices(design: Design, { value }: Cells): Check[] {
  const supplies = design.points.map((_, point) => value('point_supply', { point })).join();
  return design.runs.flatMap(({ fuse, relay }, run): Check[] => {
    const at = { run };
    const first = fuse?.curve?.[0]?.current;
    return [
      ...(first === undefined
        ? []
        : [
            {
              name: 'fuse_given',
              at,
              wrong: `IF(ISNUMBER(#),IF(#<${first},0,1),0)`,
              takes: `takes less than ${first} A, where the curve of the fuse starts`,
            } as const,
          ]),
      ...(relay === null
        ? []
        : ([
            {
              name: 'relay_pull_in_20',
              at,
              wrong: `IF(ISNUMBER(#),IF(#>=MAX(${supplies}),1,0),0)`,
              takes: 'takes less than the highest supply of the points, or the relay cannot close',
            },
            {
              name: 'relay_drop_out_20',
              at,
              wrong: notBelow('#', value('relay_pull_in_20', at)),
              takes: 'takes less than the pull-in voltage',
            },
            {
              name: 'relay_coil_max',
              at,
              wrong: notBelow(value('relay_pull_in_20', at), '#'),
              takes: 'takes more than the pull-in voltage',
            },
            ...(relay.derating === null
              ? []
              : [
                  {
                    name: 'relay_given',
                    at,
                    wrong: 'IF(ISNUMBER(#),0,1)',
                    takes: 'takes the rating of the relay whose contact currents the design has',
                  } as const,
                ]),
          ] as const)),
    ];
  });
}

/** Of a kit: what sits on a conductor sits within its length. */
function places(design: Design, { value }: Cells): Check[] {
  return design.wires.flatMap((wire, i): Check[] => {
    const run = design.runs[wire.run];
    const far = Math.max(
      ...(['fuse', 'relay'] as const).map((device) =>
        run?.[device] ? (design.kit[`${device}_at`].get(run.name) ?? 0) : 0,
      ),
    );
    return far > 0
      ? [
          {
            name: 'wire_length',
            at: { wire: i },
            wrong: `IF(ISNUMBER(${value('wire_length', { wire: i })}),IF(${value('wire_length', { wire: i })}<${far},1,0),0)`,
            takes: `takes at least ${far} m: the design places a fuse or a relay there`,
          },
        ]
      : [];
  });
}
