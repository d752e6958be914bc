/** Networks for tests, as a user writes them. */
import { type BusStudy, createStudy } from '@fieldpair/shared';
import { projectOf } from './check-text.js';

/** The study of the first bus of a text; throws when there is none. */
export function studyText(text: string): BusStudy {
  const [store] = projectOf({ 'test.pair': text }).storesOf('test.pair');
  const [bus] = store?.buses ?? [];
  if (!store || !bus) throw new Error('the test describes no bus');
  return createStudy(store, bus);
}
