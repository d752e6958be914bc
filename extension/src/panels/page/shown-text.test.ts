import { expect, it } from 'vitest';
import { shownText } from './shown-text.js';

it('shows a name that turns the direction of writing as what it is, and leaves letters of any script alone', () => {
  expect(shownText('\u202Egnp.esac')).toBe('\uFFFDgnp.esac');
  expect(shownText('a\u0000b\u2066c')).toBe('a\uFFFDb\uFFFDc');
  for (const text of ['Kühlraum', 'برّاد الألبان', '冷冻室 🧊', 'two\nlines']) expect(shownText(text)).toBe(text);
});
