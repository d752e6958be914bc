import { describe, expect, it } from 'vitest';
import { formatText } from '../language/src/format/format.js';
import { projectOf, sampleTexts } from './testing/samples.js';

const files = [...sampleTexts.keys()];
const filesIn = (folder: string) => files.filter((file) => file.startsWith(folder));

/** What is wrong in the files of one folder, notes apart. */
function faultsIn(folder: string): string[] {
  return projectOf(sampleTexts, filesIn(folder))
    .check()
    .findings.filter(({ severity, waived }) => severity !== 'info' && !waived)
    .map(({ rule, message }) => `${rule}: ${message}`);
}

describe('the sample stores', () => {
  it('have a catalogue whose every entry some sample uses, or that is there for a reason', () => {
    const unused = projectOf(sampleTexts)
      .check()
      .findings.filter(({ rule }) => rule === 'unused-entry');
    expect(unused.map(({ at }) => at).sort()).toEqual(['LineRepeater']);
  });

  it.each(files)('%s is written as the formatter writes', (file) => {
    const text = sampleTexts.get(file)!;
    expect(formatText(text)).toBe(text);
  });

  it.each(['catalogue', 'small', 'full', 'power', 'channels'])('%s has neither an error nor a warning', (folder) => {
    expect(faultsIn(folder)).toEqual([]);
  });

  it('as-found yields a finding under each remark of the survey, and elsewhere none', () => {
    const folder = 'as-found/';
    const project = projectOf(sampleTexts, filesIn(folder));
    const found = new Set<string>();
    for (const { place, severity } of project.check().findings) {
      const before = project.textOf(place.file)?.slice(0, place.start) ?? '';
      if (severity !== 'info') found.add(`${place.file}:${before.split('\n').length}`);
    }
    const remarked = filesIn(folder).flatMap((file) =>
      sampleTexts
        .get(file)!
        .split('\n')
        .flatMap((line, index) => (/^\s+\/\/ /.test(line) ? `${file}:${index + 2}` : [])),
    );
    expect(remarked.length).toBeGreaterThanOrEqual(12);
    expect([...found].sort()).toEqual(remarked.sort());
  });

  it('as-found is one store in two files, with a node on buses of both', () => {
    const project = projectOf(sampleTexts, filesIn('as-found/'));
    const [store] = project.storesOf('as-found/plant-room.pair');
    expect(project.storesOf('as-found/store.pair')).toEqual([store]);
    const buses = store?.buses.filter(({ landings }) => landings.some(({ node }) => node?.name === 'gateway'));
    expect(buses?.map(({ name, place }) => [name, place.file])).toEqual([
      ['frozen', 'as-found/store.pair'],
      ['building', 'as-found/plant-room.pair'],
    ]);
  });

  it('full has the size of a full-size store', () => {
    const project = projectOf(sampleTexts, ['full/store.pair']);
    const [store] = project.storesOf('full/store.pair');
    expect(store?.nodes).toHaveLength(89);
    expect(store?.buses.filter(({ landings }) => landings.some(({ node }) => node?.name === 'head')).length).toBe(5);
    expect(store?.networks[0]?.members.map(({ node }) => node?.device?.role)).toEqual(['head', 'head']);
  });
});
