/** The workbook in the OpenDocument format. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { isOurOds } from '../../src/saved/ours.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { demoPath } from '../workbook/books.ts';
import { coilfeed, emptyFolder } from './tool.ts';

const demo = demoPath('pair-four');

test('without LibreOffice a sentence says what to do, and nothing is left behind', async () => {
  const folder = emptyFolder();
  const ran = await coilfeed(['size', demo, '--out', join(folder, 'feed.ods')], { env: { PATH: folder } });
  expect(ran.status).toBe(3);
  expect(ran.out).toBe('');
  expect(ran.err.replace(/\s+/g, ' ')).toContain(
    '"soffice" was not found. Install it, or name the workbook .xlsx',
  );
  expect(readdirSync(folder)).toEqual([]);
});

describeWithPeer('soffice', 'an .ods workbook', () => {
  test('keeps formulas, names and charts; our own file is replaced, another one is not', async () => {
    const folder = emptyFolder();
    const out = join(folder, 'feed.ods');
    const first = await coilfeed(['size', demo, '--out', out]);
    expect(first.err).toBe('');
    expect(first.out).toContain(`Workbook: ${out}`);
    const parts = unzipSync(readFileSync(out));
    expect(strFromU8(parts.mimetype ?? new Uint8Array())).toBe(
      'application/vnd.oasis.opendocument.spreadsheet',
    );
    const content = strFromU8(parts['content.xml'] ?? new Uint8Array());
    expect(content.match(/table:formula="of:=/g)?.length).toBeGreaterThan(5000);
    expect(content).toContain('table:named-range table:name="worst_drop"');
    expect(content.match(/<table:content-validation /g)?.length).toBeGreaterThan(30);
    expect(Object.keys(parts).filter((path) => /^Object \d+\/content\.xml$/.test(path))).toHaveLength(4);

    // The next run would replace it, and nothing else.
    expect(isOurOds(readFileSync(out))).toBe(true);
    expect(isOurOds(readFileSync(out).subarray(0, 9000))).toBe(false);
    writeFileSync(out, 'mine');
    const refused = await coilfeed(['size', demo, '--out', out]);
    expect(refused.status).toBe(2);
    expect(refused.err.replace(/\s+/g, ' ')).toContain('was not made by coilfeed');
    expect(readFileSync(out, 'utf8')).toBe('mine');
    expect(readdirSync(folder)).toEqual(['feed.ods']);
  });
});
