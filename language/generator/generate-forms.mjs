/**
 * Derives `src/generated/forms.ts` from the grammar: each statement as the line that the language reference, hovers and
 * completion show, with its keywords as they are and in capitals what the writer puts there: `conductor SIZE [MAKE …]`.
 *
 * A part that stands in few places has no entry of its own and is written out where it stands.
 */
const writtenOut = new Set(['Terminal', 'BiasResistors', 'LandingReference', 'NetworkMember', 'ConductorColour']);
/** What a whole file is, and how names and values are written, which the reference tells in chapters of their own. */
const noStatements = new Set(['Sheet', 'Name', 'RoleName', 'Word', 'Text', 'Quantity', 'Unit', 'Integer', 'Format']);

/** What the grammar lets be missing, so that a half-typed line is told in words, and what has to be there all the same. */
const due = { Import: 'PATH', Waiver: 'REASON' };

export function generateForms(grammar) {
  const rules = grammar.rules.filter((rule) => rule.$type === 'ParserRule');
  const statements = rules.filter(
    (rule) => !isChoice(rule) && !writtenOut.has(rule.name) && !noStatements.has(rule.name),
  );
  const rows = statements.map(({ name, definition }) => {
    const list = (values) => `[${[...new Set(values)].map((value) => `'${value}'`).join(', ')}]`;
    const parts = [
      `form: '${tidy(formOf(definition).replace(new RegExp(`\\[([^[]*"${due[name]}")\\]`), '$1'))}'`,
      `keywords: ${list(keywordsIn(definition))}`,
      `values: ${list(valuesIn(definition))}`,
    ];
    return `  ${name}: {\n${parts.map((part) => `    ${part},\n`).join('')}  },\n`;
  });
  return `// Generated from fieldpair.langium by \`npm run generate\`; do not edit.
/** Each statement of the language: how it is written, its keywords, and what its words in capitals stand for. */
export const forms = {
${rows.join('')}} as const;
`;
}

/** A rule that only says which statements may stand somewhere. */
const isChoice = ({ definition }) =>
  definition.$type === 'Alternatives' &&
  definition.elements.every((element) => element.$type === 'RuleCall' && !element.cardinality);

function formOf(element, isInside = false) {
  const bare = { ...element, cardinality: undefined };
  if (element.cardinality === '?') return `[${formOf(bare)}]`;
  if (element.cardinality) {
    // What a list goes on with is known from its first entry.
    if (element.$type === 'Group' && element.elements[0].value === ',') return ', …';
    const many = `${formOf(bare)} …`;
    return element.cardinality === '*' ? `[${many}]` : many;
  }
  switch (element.$type) {
    case 'Keyword':
      return element.value;
    case 'Group':
      return element.elements
        .map((one, index) => (isBody(element.elements, index) ? '…' : formOf(one, true)))
        .join(' ');
    case 'Alternatives': {
      const choice = element.elements.map((one) => formOf(one)).join(' | ');
      return isInside ? `(${choice})` : choice;
    }
    case 'Assignment':
      return valueForm(element, isInside);
    default:
      throw new Error(`The form of ${element.$type} is not known.`);
  }
}

/** The contents of braces, which are statements with entries of their own. */
const isBody = (elements, index) =>
  elements[index - 1]?.value === '{' && elements[index].cardinality === '*' && elements[index].$type === 'Assignment';

function valueForm({ feature, operator, terminal }, isInside) {
  if (terminal.$type !== 'RuleCall') return formOf(terminal, isInside);
  const { ref } = terminal.rule;
  if (writtenOut.has(ref.name)) return formOf(ref.definition, isInside);
  return ref.name === 'Text' ? `"${capitals(feature, operator)}"` : capitals(feature, operator);
}

const capitals = (feature, operator) =>
  (operator === '+=' ? feature.replace(/ies$/, 'y').replace(/s$/, '') : feature).toUpperCase();

function* keywordsIn(element) {
  if (element.$type === 'Keyword' && /^\w/.test(element.value)) yield element.value;
  for (const one of partsOf(element)) yield* keywordsIn(one);
}

function* valuesIn(element, before) {
  const { $type, terminal, feature, operator } = element;
  if ($type === 'Assignment' && terminal.$type === 'RuleCall' && !writtenOut.has(terminal.rule.ref.name)) {
    if (!isBody([before, element], 1)) yield capitals(feature, operator);
    return;
  }
  const parts = partsOf(element);
  for (const [index, one] of parts.entries()) yield* valuesIn(one, parts[index - 1]);
}

function partsOf({ elements, terminal, rule }) {
  if (elements) return elements;
  if (terminal) return [terminal];
  return rule && writtenOut.has(rule.ref.name) ? [rule.ref.definition] : [];
}

/** Signs stand as they are usually written. */
const tidy = (form) =>
  form
    .replace(/ ,/g, ',')
    .replace(/ ?(\.\.|\/|(?<!\.)\.(?!\.)) ?/g, '$1')
    .replace(/\[(\.|\/)/g, '[$1')
    .replace(/ \[\./g, '[.')
    .replace(/ \[\//g, '[/');
