/** Rules of the relay: its contact, its coil, its tabs. */
import { COMMON_PRACTICE, cite, PHYSICS, QUOTED } from '../basis/sources.ts';
import { FLAT_TABS } from '../data/relays.ts';
import { type Rules, relayed, run } from './rule.ts';

const CONTACTS = cite('FAA-AC-43.13-1B', 'printed', 'table 11-4');

export const relayRules = {
  relay_contact: {
    per: 'run',
    value: 'run_effective',
    sense: 'at most',
    limit: 'relay_allowed',
    source: COMMON_PRACTICE,
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
    limit: 'relay_supply',
    source: PHYSICS,
    applies: relayed,
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
  },
  relay_make: {
    per: 'run',
    value: 'make_current',
    sense: 'at most',
    limit: 'relay_make_limit',
    source: PHYSICS,
    applies: (design, i) => relayed(design, i) && design.runs.some((r) => r.capacitor !== null),
  },
} as const satisfies Rules;
