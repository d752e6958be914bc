/** Loads every YAML file of a folder: what the check of the same data is compared with. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { load } from 'js-yaml';

const [folder] = process.argv.slice(2);
let stores = 0;
for (const name of readdirSync(folder)) {
  if (name.endsWith('.yaml') && load(readFileSync(join(folder, name), 'utf8')).store) stores++;
}
console.log(stores);
