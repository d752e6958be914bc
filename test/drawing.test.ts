/** The samples as drawings: all of each store is there, and all of it can be read. */
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { createStudy, drawStore, printColours, sceneSvg } from '../shared/src/index.js';
import { illegible } from '../shared/src/testing/legible.js';
import { projectOf, sampleTexts } from './testing/samples.js';

const files = [...sampleTexts.keys()];
const project = projectOf(sampleTexts);
const stores = new Map(files.flatMap((file) => project.storesOf(file).map((store) => [store.name, store] as const)));
const findings = project.check().findings;

describe('the drawings of the samples', () => {
  it.each([...stores.keys()])('%s', (name) => {
    const store = stores.get(name)!;
    const studies = store.buses.map((bus) => createStudy(store, bus));
    for (const scale of [false, true]) {
      for (const width of [380, 640, 1120, 2400]) {
        const scene = drawStore(store, studies, findings, { scale, width });
        expect(illegible(scene)).toEqual([]);
        const count = (kind: string) => scene.parts.filter((part) => part.kind === kind).length;
        const runs = store.buses.flatMap((bus) => bus.runs);
        expect(count('bus')).toBe(store.buses.length);
        expect(count('landing')).toBe(store.buses.reduce((sum, { landings }) => sum + landings.length, 0));
        expect(count('run')).toBe(runs.filter(({ spare }) => !spare).length);
        expect(count('spare')).toBe(runs.filter(({ spare }) => spare).length);
        expect(XMLValidator.validate(sceneSvg(scene, printColours))).toBe(true);
        // Every finding of the store is shown at some part, and only once.
        const shown = scene.parts.flatMap((part) => part.findings.map(({ message }) => message));
        const all = findings.filter((one) => one.store === name).map(({ message }) => message);
        expect(shown.toSorted()).toEqual(all.toSorted());
      }
    }
  });
});
