// A run is over before most of its code has been translated with care, and until then an array that is taken apart or walked costs
// a call and an object for every element: a tenth of a short run. So the packed program takes arrays apart by their places, as a
// person would write who gave up `const [x, y] = point` and `for (const one of all)`. Types tell what is an array: a map, a set or
// a generator stays as it is written. The compiler of the project has no such interface, so an earlier one is asked.
import { Project, ts } from 'ts-morph';

const { factory: f, NodeFlags, SyntaxKind } = ts;

/**
 * The texts of source files as JavaScript, arrays taken apart and walked by their places.
 *
 * @param {readonly string[]} files
 * @returns {Map<string, string>} by the path of each file, and of each one it imports
 */
export function byPlaces(files) {
  const project = new Project({
    compilerOptions: {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      verbatimModuleSyntax: true,
      resolveJsonModule: true,
      strict: true,
      noCheck: true,
    },
  });
  project.addSourceFilesAtPaths(files);
  project.resolveSourceFileDependencies();
  const program = project.getProgram().compilerObject;
  const rewrite = rewriter(program.getTypeChecker());
  const texts = new Map();
  for (const file of program.getSourceFiles()) {
    if (file.isDeclarationFile || program.isSourceFileFromExternalLibrary(file) || ts.isJsonSourceFile(file))
      continue;
    const keep = (_, text) => texts.set(file.fileName, text);
    program.emit(file, keep, undefined, false, { before: [rewrite] });
  }
  return texts;
}

function rewriter(checker) {
  const isArray = (type) => {
    if (type.isUnion()) return type.types.every(isArray);
    const least = type.isTypeParameter() ? checker.getBaseConstraintOfType(type) : type;
    return least !== undefined && (checker.isArrayType(least) || checker.isTupleType(least));
  };
  const holdsArray = (node) => isArray(checker.getTypeAtLocation(node));
  const place = (array, i) => f.createElementAccessExpression(array, i);
  const variable = (name, value) => f.createVariableDeclaration(name, undefined, undefined, value);
  const variables = (all) =>
    f.createVariableStatement(undefined, f.createVariableDeclarationList(all, NodeFlags.Let));

  return (context) => (file) => {
    /** Declarations of what a pattern names, taken from an array that has a name. */
    const taken = (pattern, array) =>
      pattern.elements.flatMap((element, i) => {
        if (ts.isOmittedExpression(element)) return [];
        if (element.dotDotDotToken) {
          const slice = f.createPropertyAccessExpression(array, 'slice');
          return named(element.name, f.createCallExpression(slice, undefined, [f.createNumericLiteral(i)]));
        }
        if (!element.initializer) return named(element.name, place(array, i));
        const missing = f.createStrictEquality(place(array, i), f.createVoidZero());
        const otherwise = visit(element.initializer);
        return named(
          element.name,
          f.createConditionalExpression(missing, undefined, otherwise, undefined, place(array, i)),
        );
      });

    /** Declarations of a name, or of all names of a pattern, with a value. */
    const named = (name, value) => {
      if (!ts.isArrayBindingPattern(name) || !holdsArray(name)) return [variable(visit(name), value)];
      const array = f.createUniqueName('places');
      return [variable(array, value), ...taken(name, array)];
    };

    const declared = (one) => {
      const { name, initializer } = one;
      if (!initializer || !ts.isArrayBindingPattern(name) || !holdsArray(initializer))
        return [ts.visitEachChild(one, visit, context)];
      // written side by side, nothing need be held in an array
      const plain = name.elements.every(
        (each) =>
          ts.isBindingElement(each) &&
          ts.isIdentifier(each.name) &&
          !each.dotDotDotToken &&
          !each.initializer,
      );
      const values = ts.isArrayLiteralExpression(initializer) ? initializer.elements : [];
      if (plain && values.length === name.elements.length && !values.some(ts.isSpreadElement))
        return name.elements.map((each, i) => variable(each.name, visit(values[i])));
      const array = f.createUniqueName('places');
      return [variable(array, visit(initializer)), ...taken(name, array)];
    };

    /** A function's parameters with a name for each array, and what its body begins with. */
    const parameters = (all) => {
      const apart = [];
      const kept = all.map((one) => {
        if (!ts.isArrayBindingPattern(one.name) || one.dotDotDotToken || !holdsArray(one)) return visit(one);
        const array = f.createUniqueName('places');
        apart.push(...taken(one.name, array));
        return f.createParameterDeclaration(
          undefined,
          undefined,
          array,
          undefined,
          undefined,
          one.initializer && visit(one.initializer),
        );
      });
      return { kept, apart };
    };

    const withBody = (node, update) => {
      // a default may ask for what an array before it holds; a generator takes apart when it is called
      const defaults = node.parameters.some(
        ({ name, initializer }) => initializer && !ts.isArrayBindingPattern(name),
      );
      const { kept, apart } = defaults || node.asteriskToken ? { apart: [] } : parameters(node.parameters);
      if (apart.length === 0) return ts.visitEachChild(node, visit, context);
      const body = visit(node.body);
      const statements = ts.isBlock(body) ? body.statements : [f.createReturnStatement(body)];
      return update(kept, f.createBlock([variables(apart), ...statements], true));
    };

    const walked = (node) => {
      const [i, array] = [f.createUniqueName('at'), f.createUniqueName('places')];
      const { name } = node.initializer.declarations[0];
      return f.createForStatement(
        f.createVariableDeclarationList(
          [variable(i, f.createNumericLiteral(0)), variable(array, visit(node.expression))],
          NodeFlags.Let,
        ),
        f.createLessThan(i, f.createPropertyAccessExpression(array, 'length')),
        f.createPostfixIncrement(i),
        f.createBlock([variables(named(name, place(array, i))), visit(node.statement)], true),
      );
    };

    const visit = (node) => {
      switch (node.kind) {
        case SyntaxKind.VariableDeclarationList:
          if (ts.isForOfStatement(node.parent) || ts.isForInStatement(node.parent)) break;
          return f.updateVariableDeclarationList(node, node.declarations.flatMap(declared));
        case SyntaxKind.ArrowFunction:
          return withBody(node, (kept, body) =>
            f.createArrowFunction(
              node.modifiers,
              undefined,
              kept,
              undefined,
              node.equalsGreaterThanToken,
              body,
            ),
          );
        case SyntaxKind.FunctionDeclaration:
          if (!node.body) break;
          return withBody(node, (kept, body) =>
            f.createFunctionDeclaration(
              node.modifiers,
              undefined,
              node.name,
              undefined,
              kept,
              undefined,
              body,
            ),
          );
        case SyntaxKind.ForOfStatement:
          if (
            node.awaitModifier ||
            !ts.isVariableDeclarationList(node.initializer) ||
            !holdsArray(node.expression)
          )
            break;
          return walked(node);
      }
      return ts.visitEachChild(node, visit, context);
    };
    return visit(file);
  };
}
