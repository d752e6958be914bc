/**
 * Makes counted loops of `for (… of …)` where the types say that an array is walked.
 *
 * By an array's iterator V8 takes several times as long until it has optimised the code around the loop, and longer to
 * optimise it. A check of a thousand stores is over before that has paid, so the loops of a bundle count, and those of the
 * source read well. An array that grows meanwhile is walked to its new end either way.
 */
import ts from 'typescript';

/** A function from the path of a source to its text with counted loops; undefined where there are none to change. */
export function countedLoops(configFile) {
  const { options, fileNames } = ts.getParsedCommandLineOfConfigFile(configFile, {}, ts.sys);
  const program = ts.createProgram(fileNames, options);
  const checker = program.getTypeChecker();
  return (path) => {
    const file = program.getSourceFile(path);
    const changes = file ? changesIn(file, checker) : [];
    return changes.length === 0 ? undefined : changed(file.text, changes);
  };
}

function changesIn(file, checker) {
  const changes = [];
  const visit = (node) => {
    if (
      ts.isForOfStatement(node) &&
      !node.awaitModifier &&
      isArray(checker.getTypeAtLocation(node.expression), checker)
    )
      changes.push(...changesOf(node, file, changes.length));
    ts.forEachChild(node, visit);
  };
  visit(file);
  return changes;
}

const isArray = (type, checker) =>
  type.isUnion()
    ? type.types.every((one) => isArray(one, checker))
    : checker.isArrayType(type) || checker.isTupleType(type);

/** One loop, on the lines that it has, so that the places of errors stay true. `number` makes its names its own. */
function changesOf({ initializer, expression, statement }, file, number) {
  const list = `list$${number}`;
  const index = `index$${number}`;
  const element = `${initializer.getText(file)} = ${list}[${index}];`;
  const body = statement.getStart(file);
  const isBlock = ts.isBlock(statement);
  return [
    { start: initializer.getStart(file), end: expression.getStart(file), text: `let ${list} = ` },
    { start: expression.end, end: expression.end, text: `, ${index} = 0; ${index} < ${list}.length; ${index}++` },
    { start: body, end: isBlock ? body + 1 : body, text: `{ ${element} ` },
    ...(isBlock ? [] : [{ start: statement.end, end: statement.end, text: ' }' }]),
  ];
}

/** Changes never overlap; two at one place, the ends of two loops, are the same. */
function changed(text, changes) {
  let result = '';
  let at = 0;
  for (const { start, end, text: instead } of changes.sort((left, right) => left.start - right.start)) {
    result += text.slice(at, start) + instead;
    at = end;
  }
  return result + text.slice(at);
}
