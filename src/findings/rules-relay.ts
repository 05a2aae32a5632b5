/** Rules of the relay: its contact, its coil, its tabs. */
import { COMMON_PRACTICE, cite, PHYSICS, QUOTED } from '../basis/sources.ts';
import { FLAT_TABS, RELAY_CLASSES, RELAY_SHARES } from '../data/relays.ts';
import type { Design } from '../design/design.ts';
import { type Rules, relayed, run } from './rule.ts';

const early = (design: Design, i: number): boolean => run(design, i)?.relay?.closes === 'before cranking';
/** Whether the drop-out voltage is stated, or asked for by a dip that is. */
const held = (design: Design, i: number): boolean =>
  run(design, i)?.relay != null &&
  (run(design, i)?.relay?.drop_out != null || design.points.some(({ dip }) => dip !== null));

const HELD = 'IF(ISNUMBER(relay_drop_out_20), 1, IF(COUNT(point_dip[point])>0, 1, 0))';

const CONTACTS = cite('FAA-AC-43.13-1B', 'printed', 'table 11-4');

export const relayRules = {
  relay_contact: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'relay_allowed',
    source: RELAY_SHARES.source,
    applies: relayed,
  },
  relay_inductive: {
    per: 'run',
    value: 'relay_needed',
    sense: 'at most',
    limit: 'relay_rating',
    source: CONTACTS,
    applies: relayed,
  },
  relay_pull_in: {
    per: 'run',
    value: 'relay_pull_in',
    sense: 'at most',
    limit: 'relay_close_supply',
    source: PHYSICS,
    applies: relayed,
  },
  relay_again: {
    per: 'run',
    value: 'relay_pull_in',
    sense: 'at most',
    limit: 'relay_supply',
    advice: true,
    source: PHYSICS,
    applies: early,
    when: 'relay_closes="before cranking"',
    room: relayed,
  },
  relay_holds: {
    per: 'run',
    value: 'relay_drop_out',
    sense: 'below',
    limit: 'relay_hold_supply',
    source: PHYSICS,
    applies: held,
    when: `${HELD}=1`,
    room: relayed,
  },
  relay_holds_unsaid: {
    per: 'run',
    value: 'relay_drop_out_stated',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: QUOTED,
    applies: (design, i) => relayed(design, i) && !held(design, i),
    when: `${HELD}=0`,
    room: relayed,
  },
  relay_coil: {
    per: 'run',
    value: 'highest_supply',
    sense: 'at most',
    limit: 'relay_coil_max',
    source: RELAY_CLASSES.source,
    applies: relayed,
  },
  relay_coil_long: {
    per: 'run',
    value: 'highest_supply',
    sense: 'at most',
    limit: 'relay_long_volts',
    advice: true,
    source: QUOTED,
    applies: relayed,
  },
  relay_listed: {
    per: 'run',
    value: 'relay_on_list',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    advice: true,
    source: COMMON_PRACTICE,
    applies: relayed,
  },
  relay_worn: {
    per: 'run',
    value: 'contact_ohm',
    sense: 'at most',
    limit: 'relay_contact_limit',
    source: QUOTED,
    applies: relayed,
  },
  relay_tab_wire: {
    per: 'run',
    value: 'area',
    sense: 'at most',
    limit: 'tab_wire_allowed',
    advice: true,
    source: cite('IEC-61210', 'quoted'),
    applies: (design, i) => run(design, i)?.relay?.tab != null,
    when: 'ISNUMBER(relay_tab)',
    room: relayed,
  },
  relay_suppression: {
    per: 'run',
    value: 'suppressed',
    sense: 'at least',
    limit: 'one_needed',
    plain: true,
    source: QUOTED,
    applies: relayed,
  },
  relay_tab: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'tab_allowed',
    source: FLAT_TABS.source,
    applies: (design, i) => run(design, i)?.relay?.tab != null,
    when: 'ISNUMBER(relay_tab)',
    room: relayed,
  },
  relay_make: {
    per: 'run',
    value: 'make_current',
    sense: 'at most',
    limit: 'relay_make_limit',
    source: PHYSICS,
    applies: (design, i) => relayed(design, i) && design.runs.some((r) => r.capacitor !== null),
    when: 'COUNT(capacitor[run])>0',
    room: relayed,
  },
} as const satisfies Rules;
