/** The shop's file by way of the command line: named by the design, given by the call, judged, started. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';

test('from nothing to a sized feed with parts of the shop', async () => {
  const cwd = emptyFolder();
  mkdirSync(join(cwd, 'jobs'));
  expect((await coilfeed(['new', '--shop-file', 'shop.yaml'], { cwd })).status).toBe(0);
  expect(await coilfeed(['shop', 'shop.yaml'], { cwd })).toMatchObject({ status: 0, err: '' });
  const call = [
    '--cylinders',
    '8',
    '--order',
    '1-8-4-3-6-5-7-2',
    '--shop',
    'shop.yaml',
    '--coil',
    'example coil',
  ];
  const made = await coilfeed(['new', 'jobs/eight.yaml', ...call], { cwd });
  expect(made).toMatchObject({ status: 0, out: '' });
  // Beside the design, not beside the call.
  expect(readFileSync(join(cwd, 'jobs/eight.yaml'), 'utf8')).toContain('\nshop: ../shop.yaml\n');
  const sized = await coilfeed(['size', 'jobs/eight.yaml', '--json', '--out', 'eight.xlsx'], { cwd });
  expect(sized.status).toBe(0);
  const result = JSON.parse(sized.out);
  expect(result.shop).toMatchObject({
    currency: 'EUR',
    used: [
      { path: 'coil', name: 'example coil' },
      { path: 'feed[0].relay', name: 'power 40' },
    ],
  });
  expect(result.shop.price.total).toBeGreaterThan(0);
  // The workbook needs no shop's file, and gives the same.
  const again = await coilfeed(['size', 'eight.xlsx', '--json'], { cwd });
  expect(again.err).toContain('no input was changed');
  const { changed, ...back } = JSON.parse(again.out);
  expect(changed).toEqual([]);
  expect(back).toEqual(result);
});

test('another file by the call; none, and what cannot be used', async () => {
  const cwd = emptyFolder();
  await coilfeed(['new', '--shop-file', 'a.yaml'], { cwd });
  const other = readFileSync(join(cwd, 'a.yaml'), 'utf8').replaceAll('EUR', 'USD');
  writeFileSync(join(cwd, 'b.yaml'), other);
  await coilfeed(['new', 'd.yaml', '--shop', 'a.yaml', '--coil', 'example coil'], { cwd });
  const sized = await coilfeed(['size', 'd.yaml', '--shop', 'b.yaml', '--json'], { cwd });
  expect(JSON.parse(sized.out).shop).toMatchObject({ file: 'b.yaml', currency: 'USD' });
  const none = await coilfeed(['size', 'd.yaml', '--shop', 'c.yaml'], { cwd });
  expect(none.status).toBe(2);
  expect(none.err).toContain('"c.yaml" does not exist');
  const wrong = await coilfeed(['new', '--cylinders', '5', '--layout', 'coil_per_pair'], { cwd });
  expect(wrong).toMatchObject({ status: 2, out: '' });
  writeFileSync(join(cwd, 'bad.yaml'), 'coils: [{ name: A, resistance: 0.4 }]\n');
  const bad = await coilfeed(['shop', 'bad.yaml'], { cwd });
  expect(bad).toMatchObject({ status: 2, out: '' });
  expect(bad.err).toContain('bad.yaml:1:32 coils[0].resistance: found 0.4; add its unit');
});

test('a measured resistance is told; a logo that is not beside the file is doubtful, one that is there is not', async () => {
  const cwd = emptyFolder();
  mkdirSync(join(cwd, 'own'));
  writeFileSync(
    join(cwd, 'own/shop.yaml'),
    'shop:\n  name: A\n  logo: logo.svg\nwire: [{ size: 10 AWG, insulation: B, resistance: 3.4 mohm/m }]\n',
  );
  const none = await coilfeed(['shop', 'own/shop.yaml'], { cwd });
  expect(none.status).toBe(1);
  expect(none.out.replace(/\s+/g, ' ')).toContain(
    '“logo.svg” is not beside this file (own/shop.yaml:3:9 shop.logo)',
  );
  expect(none.out).toContain('class B: 10 AWG (measured: 3.40 mΩ/m)');
  writeFileSync(join(cwd, 'own/logo.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  expect((await coilfeed(['shop', 'own/shop.yaml'], { cwd })).status).toBe(0);
});
