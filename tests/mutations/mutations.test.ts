/**
 * Whether the tests would notice: each of these factors is made two percent larger, and the file beside it must fail, whose
 * expectations are published, worked out by hand, or from an integration of its own. Not part of `npm test`:
 *
 *   COILFEED_MUTATIONS=1 npx vitest run tests/mutations
 */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { QuantityName } from '../../src/model/model.ts';
import { runProgram } from '../cli/tool.ts';

/** By the file that must notice. */
const CAUGHT: Readonly<Record<string, readonly QuantityName[]>> = {
  // Printed weights of wire, sums by hand.
  'physics/mass': ['copper_density', 'wire_copper', 'copper_total'],
  // NEC ch. 9 table 8, FAA AC 43.13-1B.
  'physics/resistance': ['rho_20', 'alpha_20', 'lay', 'wire_copper_ohm'],
  // 33 CFR 183.425 table 5 and its notes, NEC 310.15.
  'physics/ampacity': ['size_amps', 'rating_factor', 'ambient_factor', 'bundle_factor'],
  // Textbooks; closed forms worked out outside.
  'physics/published': ['coil_ohm', 'coil_L', 'peak', 'energy', 'charge', 'product', 'cycle_time'],
  // Rectangular pulses: products by hand.
  'physics/balance': ['duty', 'total_average', 'alternator_share', 'pulse_energy', 'inrush'],
  // FAA AC 43.13-1B table 11-4, 75 % and 0.2 %/K by hand, integration in time.
  'physics/practice': ['flowing', 'fuse_rerating', 'fuse_load', 'inductive_factor', 'relay_needed'],
  // Conductors by hand and currents by integration in time.
  'physics/drop': [
    'wire_T',
    'fuse_ohm',
    'path_drop',
    'neighbour_drop',
    'delivered_peak',
    'coil_energy',
    'restoring_dwell',
  ],
  'protection/relay': ['relay_pull_in', 'contact_heat', 'trigger_current'],
  'protection/faults': ['fault_max', 'fault_min', 'chassis_ohm'],
  // IEC 60364-5-54, heat balance stepped through time.
  'protection/adiabatic': ['copper_heat', 'stuck_current'],
};

const CONFIG = fileURLToPath(new URL('vitest.config.ts', import.meta.url));
const VITEST = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));

interface Report {
  numFailedTests: number;
  numPassedTests: number;
  testResults: { status: string; message: string }[];
}

async function run(file: string, mutation: string): Promise<Report> {
  const argv = [VITEST, 'run', '--config', CONFIG, `tests/${file}.test.ts`];
  const { out, err } = await runProgram(process.execPath, argv, { env: { COILFEED_MUTATION: mutation } });
  const begin = out.indexOf('{"');
  if (begin < 0) throw new Error(`${out}${err}`);
  return JSON.parse(out.slice(begin));
}

test.each(Object.keys(CAUGHT))('%s passes as it is', async (file) => {
  const { numFailedTests, numPassedTests } = await run(file, '');
  expect(numFailedTests).toBe(0);
  expect(numPassedTests).toBeGreaterThan(2);
});

const ALL = Object.entries(CAUGHT).flatMap(([file, names]) => names.map((name) => [name, file] as const));

test.each(ALL)('two percent more of %s fails %s', async (name, file) => {
  const { numFailedTests, testResults } = await run(file, name);
  // A test that fails, not a file that cannot be loaded.
  expect(testResults.map(({ message }) => message).join('')).toBe('');
  expect(numFailedTests).toBeGreaterThan(0);
});
