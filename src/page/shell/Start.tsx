/** A design from nothing: a few questions, and the answer; what is not asked is taken as the commented start has it. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { readValue, unitsTaken } from '../../basis/read-value.ts';
import { printUnit } from '../../basis/units.ts';
import { RANGES } from '../../design/ranges.ts';
import { readOrder } from '../../design/spellings.ts';
import { readTree } from '../../design/tree.ts';
import { edited } from '../../saved/apply.ts';
import type { Edit, Plain } from '../../saved/document.ts';
import { firstDesign, orderFor } from '../../shop/first.ts';
import { withUnit } from '../form/info.ts';
import { asTyped } from '../form/written.ts';
import { valueAt } from '../place.ts';
import { useBench, useBenchState, useUnits } from '../state/use.ts';

const LAYOUTS: Readonly<Record<string, string>> = {
  coil_per_cylinder: 'a coil on each plug, one spark a cycle',
  wasted_coil_per_cylinder: 'a coil on each plug, sparking twice a cycle',
  coil_per_pair: 'a coil for two cylinders',
  single_coil: 'one coil and a distributor',
};

interface Asked {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly us?: string;
  readonly key: readonly (string | number)[];
}

const SHEET: readonly Asked[] = [
  { id: 'ohm', label: 'Primary resistance', unit: 'ohm', key: ['coil', 'resistance'] },
  { id: 'henry', label: 'Inductance of the coil', unit: 'mH', key: ['coil', 'inductance'] },
];
const CHARGE: readonly Asked[] = [
  { id: 'dwell', label: 'Dwell', unit: 'ms', key: ['ignition', 'dwell'] },
  { id: 'rpm', label: 'Highest engine speed', unit: 'rpm', key: ['points', 2, 'rpm'] },
];
const length = (id: string, label: string, key: Asked['key']): Asked => ({
  id,
  label,
  unit: 'm',
  us: 'in',
  key,
});
const PLACES: readonly Asked[] = [
  length('main', 'Battery to the coils, over fuse and relay', ['feed', 0, 'length']),
  length('branch', 'From there to each coil', ['feed', 1, 'length']),
  length('ground', 'Coil to the ground on the engine', ['return', 0, 'length']),
  length('strap', 'Engine to battery negative', ['return', 1, 'length']),
  { id: 'hot', label: 'Temperature along the engine', unit: 'degC', us: 'degF', key: ['feed', 1, 'ambient'] },
];

/** What is picked; each has something usual from the start. */
interface Picked {
  readonly cylinders: number;
  readonly stroke: 2 | 4;
  readonly layout: string;
  /** Name of a coil of the shop's file; empty where its data sheet is typed. */
  readonly coil: string;
}

/** Names of the coils in the shop's file beside the design. */
function coilsOf(shop: string | undefined): string[] {
  const coils = shop === undefined ? null : valueAt(readTree(shop, 'shop').value, ['coils']);
  return (Array.isArray(coils) ? coils : []).map((coil) => asTyped(valueAt(coil, ['name']))).filter(Boolean);
}

interface StartProps {
  readonly close: () => void;
  /** Leads to the answer when there is one. */
  readonly done: () => void;
}

export function Start({ close, done }: StartProps) {
  const bench = useBench();
  const { shop } = useBenchState('shop');
  const us = useUnits() === 'us';
  const dialog = useRef<HTMLDialogElement>(null);
  const first = useRef<HTMLSelectElement>(null);
  const [picked, pick] = useState<Picked>({ cylinders: 4, stroke: 4, layout: 'coil_per_cylinder', coil: '' });
  const [order, setOrder] = useState<string | null>(null);
  const [given, give] = useState<Readonly<Record<string, string>>>({});
  /** Fields that were left: what is wrong with them is said. */
  const [left, leave] = useState<readonly string[]>([]);
  useEffect(() => {
    dialog.current?.showModal();
    first.current?.focus();
  }, []);
  const coils = useMemo(() => coilsOf(shop?.text), [shop]);
  const { cylinders, stroke, layout, coil } = picked;
  const start = useMemo(
    () =>
      firstDesign({
        ...picked,
        order: null,
        shop: coil === '' ? null : (shop?.file ?? null),
        coil: coil || null,
        dwell: null,
        // What else lies on the shelf is chosen in the forms.
        has: null,
      }),
    [picked],
  );
  const tree = useMemo(() => readTree(start, 'new.yaml').value, [start]);
  const unitOf = ({ unit, us: other }: Asked): string => (us ? (other ?? unit) : unit);
  const typed = (asked: Asked): string => given[asked.id] ?? asTyped(valueAt(tree, asked.key));
  const groups: readonly (readonly [title: string, asked: readonly Asked[]])[] = [
    ['The coil, from its data sheet', coil === '' ? [...SHEET, ...CHARGE] : CHARGE],
    ['Where the parts sit: lengths of wire, one way', PLACES],
  ];
  const written = order ?? orderFor(cylinders);
  const faults = new Map<string, string>([
    ...orderFault(written, cylinders),
    ...groups.flatMap(([, asked]) =>
      asked.flatMap((one): [string, string][] => {
        const read = readValue(withUnit(typed(one), unitOf(one)), one.unit);
        return read.ok
          ? []
          : [[one.id, `${one.label}: takes a number with its unit, ${unitsTaken(one.unit).join(', ')}`]];
      }),
    ),
  ]);
  const told = [...faults].filter(([id]) => left.includes(id));
  const make = (): void => {
    const [wrong] = faults.keys();
    if (wrong !== undefined) {
      leave([...faults.keys()]);
      document.getElementById(`start-${wrong}`)?.focus();
      return;
    }
    const rpm = withUnit(given.rpm ?? '', 'rpm');
    const read = readValue(rpm, 'rpm');
    const whole: [Edit['key'], Plain][] = [
      [['title'], `${cylinders} cylinder${cylinders === 1 ? '' : 's'}, ${LAYOUTS[layout]}`],
      [['engine', 'firing_order'], orderOf(written)],
      ...groups.flatMap(([, asked]) =>
        asked.flatMap((one): [Edit['key'], Plain][] => {
          const value = given[one.id];
          return value === undefined ? [] : [[one.key, withUnit(value, unitOf(one))]];
        }),
      ),
      // The charts go as far as the engine does, where two of their speeds lie below that.
      ...(read.ok && read.value >= 1500 ? [[['sweep', 'to'], rpm] as [Edit['key'], Plain]] : []),
      ...(given.hot === undefined
        ? []
        : [[['return', 0, 'ambient'], withUnit(given.hot, us ? 'degF' : 'degC')] as [Edit['key'], Plain]]),
    ];
    const text = edited(
      start,
      whole.map(([key, value]) => ({ key, value })),
    );
    bench.load({ text, file: 'new.yaml', shop: null });
    dialog.current?.close();
    done();
  };
  const text = (id: string, label: string, value: string, take: (value: string) => void) => (
    <div
      class={`field ${id === 'order' && cylinders > 6 ? 'long' : ''} ${left.includes(id) && faults.has(id) ? 'wrong' : ''}`}
      key={id}
    >
      <label for={`start-${id}`}>{label}</label>
      <input
        id={`start-${id}`}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={value}
        aria-invalid={left.includes(id) && faults.has(id)}
        aria-describedby="start-wrong"
        onInput={(event) => take(event.currentTarget.value)}
        onBlur={() => leave([...left, id])}
      />
    </div>
  );
  return (
    <dialog ref={dialog} class="panel start" aria-labelledby="start" onClose={close}>
      <form
        class="inside"
        method="dialog"
        onSubmit={(event) => {
          event.preventDefault();
          make();
        }}
      >
        <div class="headline">
          <h2 id="start">A new feed</h2>
          <span class="buttons">
            <button type="button" onClick={() => dialog.current?.close()}>
              Close
            </button>
          </span>
        </div>
        <p class="quiet">
          Numbers take the unit beside them; any other can be written. Everything can be changed afterwards,
          and what is not asked here stands in the forms.
        </p>
        <fieldset>
          <legend>The engine</legend>
          <div class="field">
            <label for="start-cylinders">Cylinders</label>
            <select
              id="start-cylinders"
              ref={first}
              value={cylinders}
              onChange={(event) => {
                pick({ ...picked, cylinders: Number(event.currentTarget.value) });
                setOrder(null);
              }}
            >
              {Array.from({ length: RANGES.cylinders.to }, (_, i) => i + 1).map((n) => (
                <option key={n} value={n}>
                  {n}
                </option>
              ))}
            </select>
          </div>
          <div class="field">
            <label for="start-stroke">Strokes of a working cycle</label>
            <select
              id="start-stroke"
              value={stroke}
              onChange={(event) =>
                pick({ ...picked, stroke: Number(event.currentTarget.value) === 2 ? 2 : 4 })
              }
            >
              <option value={4}>4</option>
              <option value={2}>2</option>
            </select>
          </div>
          {text('order', 'Firing order', written, setOrder)}
          <div class="field long">
            <label for="start-layout">Coils</label>
            <select
              id="start-layout"
              value={layout}
              onChange={(event) => pick({ ...picked, layout: event.currentTarget.value })}
            >
              {Object.entries(LAYOUTS).map(([key, words]) => (
                <option key={key} value={key}>
                  {words}
                </option>
              ))}
            </select>
          </div>
          {coils.length === 0 ? null : (
            <div class="field long">
              <label for="start-coil">Which coil</label>
              <select
                id="start-coil"
                value={coil}
                onChange={(event) => pick({ ...picked, coil: event.currentTarget.value })}
              >
                <option value="">by its data sheet</option>
                {coils.map((name) => (
                  <option key={name} value={name}>
                    {name}
                  </option>
                ))}
              </select>
            </div>
          )}
        </fieldset>
        {groups.map(([title, asked]) => (
          <fieldset key={title}>
            <legend>{title}</legend>
            {asked.map((one) =>
              text(one.id, `${one.label}, ${printUnit(unitOf(one))}`, typed(one), (value) =>
                give({ ...given, [one.id]: value }),
              ),
            )}
          </fieldset>
        ))}
        <div class="made">
          <button type="submit" class="main">
            Show the answer
          </button>
          <p id="start-wrong" class="problem" role="status">
            {told.map(([, words]) => words).join('. ')}
          </p>
        </div>
      </form>
    </dialog>
  );
}

/** A single cylinder is no order for the reader. */
const orderOf = (written: string): number[] => readOrder(written) ?? [Number(written)];

/** An order that is not one of the cylinders, each once. */
function orderFault(written: string, cylinders: number): [string, string][] {
  const all = Array.from({ length: cylinders }, (_, i) => i + 1);
  const numbers = orderOf(written).sort((a, b) => a - b);
  return numbers.join() === all.join()
    ? []
    : [
        [
          'order',
          `Firing order: takes the cylinders 1 to ${cylinders}, each once, such as ${orderFor(cylinders)}`,
        ],
      ];
}
