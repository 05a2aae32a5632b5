/** Contact of a relay: what it carries at its temperature, its drop and heat, its tabs, and closing onto capacitors. */
import type { At, Layout, Quantities } from '../basis/quantity.ts';
import { cite, DEFINITION, fromMemory, PHYSICS, QUOTED } from '../basis/sources.ts';
import { RELAY_LOAD_FACTORS, RELAY_SHARES, relay } from '../data/relays.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { heatRow } from './by-heat.ts';

const [COOL, HOT, HOTTEST] = RELAY_SHARES.rows as [Shared, Shared, Shared];
type Shared = (typeof RELAY_SHARES.rows)[number];

const derated = ({ runs }: Layout, at: At) => {
  const rows = runs[at.run as number]?.relay?.derating;
  return rows
    ? heatRow(
        rows.map((row) => ({ at: row.at, value: row.rating })),
        at.hot as number,
      )
    : undefined;
};

export const contacts = {
  relay_given: {
    symbol: 'I_r,g',
    label: 'Relay: contact rating, or auto (empty: no relay in this run)',
    unit: 'A',
    per: ['run'],
    path: 'runs.{run}.relay.rating',
    range: ends(RANGES.rating, 'A'),
  },
  relay_rated_at: {
    symbol: 'T_r',
    label: 'Relay: temperature of that rating (empty: not known)',
    unit: 'degC',
    per: ['run'],
    path: 'runs.{run}.relay.rated_at',
    range: ends(RANGES.temperature, 'degC'),
  },
  relay_contact_ohm: {
    symbol: 'R_k',
    label: 'Relay: contact resistance',
    unit: 'ohm',
    shown: 'mohm',
    per: ['run'],
    path: 'runs.{run}.relay.contact',
    range: ends(RANGES.joint, 'ohm'),
    source: QUOTED,
  },
  relayed: {
    symbol: 'relay',
    label: 'Has a relay (1) or none (0)',
    unit: '1',
    per: ['run'],
    formula: 'IF(ISNUMBER(relay_ambient), 1, 0)',
    source: DEFINITION,
  },
  relay_contact_limit: relay.relay_contact_limit,
  relay_own_table: {
    symbol: 'tab_r',
    label: 'The design has the contact current by temperature of the maker (1) or not (0)',
    unit: '1',
    per: ['run'],
    value: (at, { runs }) => (runs[at.run]?.relay?.derating ? 1 : 0),
  },
  relay_hot_T: {
    symbol: 'T_r,i',
    label: 'Relay: temperatures of the maker’s table',
    unit: 'degC',
    per: ['run'],
    across: 'hot',
    value: (at, layout) => derated(layout, at)?.at ?? '',
  },
  relay_hot_amps: {
    symbol: 'I_r,i',
    label: 'Relay: contact current at these temperatures',
    unit: 'A',
    per: ['run'],
    across: 'hot',
    value: (at, layout) => derated(layout, at)?.value ?? '',
  },
  relay_hot_row: {
    symbol: 'i_r',
    label: 'Relay: row of the maker’s table at or below the ambient, the first one below it',
    unit: '1',
    per: ['run'],
    formula:
      'IF(relay_own_table=1, IF(relay_ambient<INDEX(relay_hot_T[hot], 1, 1), 1, MATCH(relay_ambient, relay_hot_T[hot], 1)), "")',
    source: DEFINITION,
  },
  relay_hot_part: {
    symbol: 'x_r,T',
    label: 'Relay: way from that row to the next',
    unit: '1',
    per: ['run'],
    formula:
      'IF(relay_own_table=1, MAX(0, (relay_ambient-INDEX(relay_hot_T[hot], 1, relay_hot_row))/' +
      '(INDEX(relay_hot_T[hot], 1, relay_hot_row+1)-INDEX(relay_hot_T[hot], 1, relay_hot_row))), "")',
    source: PHYSICS,
  },
  relay_table_amps: {
    symbol: 'I_r,tab',
    label: 'Contact current at the ambient by the maker’s table, straight between its rows',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(relay_own_table=1, (1-relay_hot_part)*INDEX(relay_hot_amps[hot], 1, relay_hot_row)+' +
      'relay_hot_part*INDEX(relay_hot_amps[hot], 1, relay_hot_row+1), "")',
    source: PHYSICS,
    note: 'Beyond the last row nothing is carried.',
  },
  relay_cool_T: {
    symbol: 'T_r0',
    label: 'Ambient temperature up to which a contact has its nominal rating',
    unit: 'degC',
    value: COOL.at,
    source: RELAY_SHARES.source,
  },
  relay_hot_at: {
    symbol: 'T_r1',
    label: 'Usual derating of a contact: first temperature',
    unit: 'degC',
    value: HOT.at,
    source: RELAY_SHARES.source,
  },
  relay_hot_share: {
    symbol: 'k_r1',
    label: 'Usual derating of a contact: share of the rating that is left at the first',
    unit: '1',
    value: HOT.share,
    source: RELAY_SHARES.source,
  },
  relay_hottest_at: {
    symbol: 'T_r2',
    label: 'Usual derating of a contact: second temperature',
    unit: 'degC',
    value: HOTTEST.at,
    source: RELAY_SHARES.source,
  },
  relay_hottest_share: {
    symbol: 'k_r2',
    label: 'Usual derating of a contact: share of the rating that is left at the second',
    unit: '1',
    value: HOTTEST.share,
    source: RELAY_SHARES.source,
  },
  relay_first_slope: {
    symbol: 'k_r1′',
    label: 'Usual derating of a contact up to the first temperature, share of the rating by kelvin',
    unit: '1/K',
    formula: '(1-relay_hot_share)/(relay_hot_at-relay_cool_T)',
    source: RELAY_SHARES.source,
  },
  relay_second_slope: {
    symbol: 'k_r2′',
    label: 'Usual derating of a contact beyond it, share of the rating by kelvin',
    unit: '1/K',
    formula: '(relay_hot_share-relay_hottest_share)/(relay_hottest_at-relay_hot_at)',
    source: RELAY_SHARES.source,
  },
  relay_usual_share: {
    symbol: 'k_r,T',
    label: 'Usual share of the rating that is left at the ambient',
    unit: '1',
    per: ['run'],
    formula:
      'IF(relayed=1, MAX(0, MIN(1, relay_hot_share+(relay_hot_at-relay_ambient)*relay_first_slope, ' +
      'relay_hot_share+(relay_hot_at-relay_ambient)*relay_second_slope)), "")',
    source: RELAY_SHARES.source,
    note: 'Straight between the temperatures: the lower of the two lines, since the second one is steeper.',
  },
  relay_rated_share: {
    symbol: 'k_r,rat',
    label: 'The same at the temperature of the rating, never below the last share that is quoted',
    unit: '1',
    per: ['run'],
    formula:
      'IF(ISNUMBER(relay_rated_at), MAX(relay_hottest_share, MIN(1, relay_hot_share+(relay_hot_at-relay_rated_at)*relay_first_slope, ' +
      'relay_hot_share+(relay_hot_at-relay_rated_at)*relay_second_slope)), 1)',
    source: RELAY_SHARES.source,
    note: 'A rating without a temperature is one at 23 °C.',
  },
  relay_derating: {
    symbol: 'k_r',
    label: 'Factor on the contact rating at the ambient, without a table of the maker',
    unit: '1',
    per: ['run'],
    formula:
      'IF(relayed=1, IF(relay_ambient<=IF(ISNUMBER(relay_rated_at), relay_rated_at, relay_cool_T), 1, MIN(1, relay_usual_share/relay_rated_share)), "")',
    source: RELAY_SHARES.source,
    note: 'Up to the temperature of the rating the rating holds.',
  },
  inductive_factor: {
    symbol: 'k_ind',
    label: 'Contact rating over continuous current of an inductive load, 12 V direct current',
    unit: '1',
    value: RELAY_LOAD_FACTORS.rows.find((row) => row.load === 'inductive')?.factor ?? Number.NaN,
    source: RELAY_LOAD_FACTORS.source,
  },
  relay_needed: {
    symbol: 'I_r,ind',
    label: 'Least nominal contact rating for this inductive load',
    unit: 'A',
    per: ['run'],
    formula: 'IF(relayed=1, inductive_factor*run_effective, "")',
    source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-4'),
  },
  relay_wanted: {
    symbol: 'I_r,req',
    label: 'Least nominal rating that serves an inductive load, and carries it at the ambient',
    unit: 'A',
    per: ['run'],
    formula: 'IF(relayed=1, MAX(relay_needed, IF(relay_derating>0, run_effective/relay_derating, 0)), "")',
    source: PHYSICS,
  },
  relay_too_small: {
    symbol: 'n_r',
    label: 'Customary contact ratings that are too small',
    unit: '1',
    per: ['run'],
    formula: 'IF(relayed=1, SUMPRODUCT((relay_size_rating[relay_size]<relay_wanted)*1), "")',
    source: DEFINITION,
  },
  relay_rating: {
    symbol: 'I_r',
    short: 'Relay rating',
    label: 'Contact rating of the relay',
    unit: 'A',
    per: ['run'],
    exact: true,
    formula:
      'IF(relayed=1, IF(ISNUMBER(relay_given), relay_given, INDEX(relay_size_rating[relay_size], ' +
      'MIN(relay_too_small+1, COUNT(relay_size_rating[relay_size])), 1)), "")',
    source: DEFINITION,
    note: 'The smallest customary rating that serves; the largest one, which then fails, when none does.',
  },
  relay_allowed: {
    symbol: 'I_r,T',
    short: 'Contact may carry',
    label: 'Contact rating at the ambient temperature',
    unit: 'A',
    per: ['run'],
    formula: 'IF(relayed=1, IF(relay_own_table=1, relay_table_amps, relay_rating*relay_derating), "")',
    source: PHYSICS,
  },
  relay_on_list: {
    symbol: 'std_r',
    label: 'Rating of the relay is a customary one (1) or not (0)',
    unit: '1',
    per: ['run'],
    formula: 'IF(relayed=1, MIN(1, SUMPRODUCT((relay_size_rating[relay_size]=relay_rating)*1)), "")',
    source: DEFINITION,
  },
  relay_load: {
    symbol: 'x_r',
    short: 'Load of the rating',
    label: 'Load of the contact, share of its rating',
    unit: '1',
    shown: '%',
    per: ['wire'],
    formula: 'IF(relayed=1, worst_effective/relay_rating, "")',
    source: DEFINITION,
  },
  contact_ohm: {
    symbol: 'R_k,r',
    label: 'Resistance of the relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['run'],
    formula: 'IF(relayed=1, relay_contact_ohm, 0)',
    source: QUOTED,
  },
  contact_drop: {
    symbol: 'U_k',
    short: 'Drop of the contact',
    label: 'Drop of the contact at the effective current',
    unit: 'V',
    shown: 'mV',
    per: ['wire'],
    formula: 'IF(relayed=1, contact_ohm*worst_effective, "")',
    source: PHYSICS,
  },
  contact_heat: {
    symbol: 'P_k',
    short: 'Heat in the contact',
    label: 'Heat in the contact at the effective current',
    unit: 'W',
    per: ['wire'],
    formula: 'IF(relayed=1, contact_ohm*worst_effective^2, "")',
    source: PHYSICS,
  },
  relay_tab: {
    symbol: 'b_t',
    label: 'Relay: width of the flat tabs of the contact (empty: not known)',
    unit: 'mm',
    per: ['run'],
    path: 'runs.{run}.relay.tab',
    exact: true,
    range: ends(RANGES.tab, 'mm'),
  },
  tab_allowed: {
    symbol: 'I_tab',
    label: 'Customary continuous current of the tabs',
    unit: 'A',
    per: ['run'],
    exact: true,
    formula:
      'IF(ISNUMBER(relay_tab), IFERROR(INDEX(tab_amps[tab], MATCH(relay_tab, tab_width[tab], 0), 1), ""), "")',
    source: fromMemory('medium'),
  },
  tab_wire_allowed: {
    symbol: 'S_tab',
    label: 'Largest wire for tabs of this width',
    unit: 'mm^2',
    per: ['run'],
    exact: true,
    formula:
      'IF(ISNUMBER(relay_tab), IFERROR(INDEX(tab_wire[tab], MATCH(relay_tab, tab_width[tab], 0), 1), ""), "")',
    source: cite('IEC-61210', 'quoted'),
  },
  capacitor: {
    symbol: 'C_h',
    label: 'Capacitor at the end of the run (empty: none)',
    unit: 'uF',
    per: ['run'],
    path: 'runs.{run}.capacitor',
    range: ends(RANGES.capacitor, 'uF'),
  },
  relay_make_limit: {
    symbol: 'I_mk,max',
    label: 'Relay: largest make current (empty: not known)',
    unit: 'A',
    per: ['run'],
    path: 'runs.{run}.relay.make',
    range: ends(RANGES.make_current, 'A'),
  },
  inrush: {
    symbol: 'I_C',
    label: 'Current into a capacitor at the end of this conductor when the relay closes, everything cold',
    unit: 'A',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(capacitor), IF(fed=1, IF(ISNUMBER(source_ohm), highest_supply/(source_least+SUM(cold_ohm[wire ahead])+cold_ohm), ""), ""), "")',
    source: PHYSICS,
    note: 'The return path and the resistance of the capacitor itself are left out: a bound.',
  },
  make_current: {
    symbol: 'I_mk',
    short: 'Make current',
    label: 'Largest current into the capacitors of the harness when a relay closes',
    unit: 'A',
    formula: 'IF(COUNT(inrush[wire])>0, MAX(inrush[wire]), "")',
    source: PHYSICS,
    note: 'Several capacitors each draw theirs; the contact sees at most what the resistances before the fork allow.',
  },
  fixed_ohm: {
    symbol: 'R_fix',
    label: 'Resistance of crimps, plugs, fuse and relay contact in the run',
    unit: 'ohm',
    shown: 'mohm',
    per: ['run'],
    formula: '(run_joints*joint_ohm+run_contacts*plug_ohm)/parallel+fuse_ohm+contact_ohm',
    source: PHYSICS,
  },
} as const satisfies Quantities;
