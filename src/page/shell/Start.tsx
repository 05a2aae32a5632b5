/** A design from nothing: a few questions, and the answer; what is not asked is taken as the commented start has it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { printUnit } from '../../basis/units.ts';
import { readOrder } from '../../design/spellings.ts';
import { starter } from '../../design/starter.ts';
import { edited } from '../../saved/apply.ts';
import type { Edit, Plain } from '../../saved/document.ts';
import { orderFor } from '../../shop/first.ts';
import { withUnit } from '../form/info.ts';
import { useBench, useUnits } from '../state/use.ts';

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
  readonly start: string;
  readonly key: readonly (string | number)[];
}

const ASKED: readonly (readonly [title: string, asked: readonly Asked[]])[] = [
  [
    'The coil, from its data sheet',
    [
      { id: 'ohm', label: 'Primary resistance', unit: 'ohm', start: '0.5 ohm', key: ['coil', 'resistance'] },
      {
        id: 'henry',
        label: 'Inductance of the coil',
        unit: 'mH',
        start: '3.0 mH',
        key: ['coil', 'inductance'],
      },
      { id: 'dwell', label: 'Dwell', unit: 'ms', start: '2.8 ms', key: ['ignition', 'dwell'] },
      { id: 'rpm', label: 'Highest engine speed', unit: 'rpm', start: '7000 rpm', key: ['points', 2, 'rpm'] },
    ],
  ],
  [
    'Where the parts sit: lengths of wire, one way',
    [
      {
        id: 'main',
        label: 'Battery to the coils, over fuse and relay',
        unit: 'm',
        us: 'in',
        start: '1.5 m',
        key: ['feed', 0, 'length'],
      },
      {
        id: 'branch',
        label: 'From there to each coil',
        unit: 'm',
        us: 'in',
        start: '0.45 m',
        key: ['feed', 1, 'length'],
      },
      {
        id: 'ground',
        label: 'Coil to the ground on the engine',
        unit: 'm',
        us: 'in',
        start: '0.35 m',
        key: ['return', 0, 'length'],
      },
      {
        id: 'strap',
        label: 'Engine to battery negative',
        unit: 'm',
        us: 'in',
        start: '0.5 m',
        key: ['return', 1, 'length'],
      },
      {
        id: 'hot',
        label: 'Temperature along the engine',
        unit: 'degC',
        us: 'degF',
        start: '95 degC',
        key: ['feed', 1, 'ambient'],
      },
    ],
  ],
];

export function Start({ close }: { readonly close: () => void }) {
  const bench = useBench();
  const us = useUnits() === 'us';
  const dialog = useRef<HTMLDialogElement>(null);
  const [cylinders, setCylinders] = useState(4);
  const [order, setOrder] = useState<string | null>(null);
  const [layout, setLayout] = useState('coil_per_cylinder');
  const [given, give] = useState<Readonly<Record<string, string>>>({});
  useEffect(() => dialog.current?.showModal(), []);
  const usual = orderFor(cylinders);
  const make = (): void => {
    const written = order ?? usual;
    const values = ASKED.flatMap(([, asked]) =>
      asked.map(
        ({ id, unit, us: other, start, key }): Edit => ({
          key,
          value: withUnit(given[id] ?? start, us ? (other ?? unit) : unit),
        }),
      ),
    );
    const whole: [Edit['key'], Plain][] = [
      [['title'], `${cylinders} cylinders, ${LAYOUTS[layout]}`],
      [['engine', 'cylinders'], cylinders],
      [['engine', 'firing_order'], readOrder(written) ?? written],
      [['ignition', 'layout'], layout],
      [['return', 0, 'ambient'], withUnit(given.hot ?? '95 degC', us ? 'degF' : 'degC')],
    ];
    const text = edited(starter(), [...whole.map(([key, value]) => ({ key, value })), ...values]);
    bench.load(text, 'new.yaml');
    dialog.current?.close();
  };
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
              value={cylinders}
              onChange={(event) => {
                setCylinders(Number(event.currentTarget.value));
                setOrder(null);
              }}
            >
              {Array.from({ length: 12 }, (_, i) => i + 1).map((n) => (
                <option key={n} value={n}>
                  {n}
                </option>
              ))}
            </select>
          </div>
          <div class="field">
            <label for="start-order">Firing order</label>
            <input
              id="start-order"
              type="text"
              value={order ?? usual}
              onInput={(event) => setOrder(event.currentTarget.value)}
            />
          </div>
          <div class="field">
            <label for="start-layout">Coils</label>
            <select
              id="start-layout"
              value={layout}
              onChange={(event) => setLayout(event.currentTarget.value)}
            >
              {Object.entries(LAYOUTS).map(([key, words]) => (
                <option key={key} value={key}>
                  {words}
                </option>
              ))}
            </select>
          </div>
        </fieldset>
        {ASKED.map(([title, asked]) => (
          <fieldset key={title}>
            <legend>{title}</legend>
            {asked.map(({ id, label, start, unit, us: other }) => (
              <div class="field" key={id}>
                <label for={`start-${id}`}>
                  {label}, {printUnit(us ? (other ?? unit) : unit)}
                </label>
                <input
                  id={`start-${id}`}
                  type="text"
                  value={given[id] ?? start}
                  onInput={(event) => give({ ...given, [id]: event.currentTarget.value })}
                />
              </div>
            ))}
          </fieldset>
        ))}
        <p class="buttons">
          <button type="submit">Show the answer</button>
        </p>
      </form>
    </dialog>
  );
}
