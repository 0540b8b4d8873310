package org.lifeline.house;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.doctree.ReturnTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.PrimitiveTypeTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.lang.model.type.TypeKind;
import javax.tools.JavaFileObject;
import javax.tools.ToolProvider;

/**
 * Reads sources and lists every double that a caller meets and whose Javadoc does not say the unit in brackets: return
 * values and parameters of public methods and constructors, components of records, public constants. An array, a list,
 * a map or an optional of doubles and a function of doubles count as doubles. What overrides is described where it is declared first.
 */
final class UnitsGate extends TreePathScanner<Void, Void> {
    private static final Pattern UNIT;

    static {
        String symbol =
                "(?:mm|cm|km|m|in|ft|kN|MN|N|lbf|kip|kg|g|lb|ms|s|min|h|kJ|J|W|GPa|MPa|kPa|Pa|psi|ksi|Hz|K|°C|°F|°"
                        + "|rad|%)(?:⁻?[¹²³⁴]|\\^-?[1-9])?";
        String product = symbol + "(?:[·*]" + symbol + ")*";
        String divisor = "(?:" + symbol + "|\\(" + product + "\\))";
        String quotient = "(?:1|" + product + ")/" + divisor + "|" + product;
        UNIT = Pattern.compile("\\[(?:-|" + quotient + "|unit of [^\\[\\]]+)]");
    }

    private static final Set<String> BOXES = Set.of(
            "Double",
            "OptionalDouble",
            "DoubleStream",
            "DoubleSupplier",
            "DoubleUnaryOperator",
            "DoubleBinaryOperator");

    private final DocTrees docs;
    private final List<String> findings = new ArrayList<>();
    private int doubles;

    /**
     * What the gate saw.
     *
     * @param doubles how many doubles it looked at
     * @param findings those without a unit, one a line
     */
    record Report(int doubles, List<String> findings) {}

    private UnitsGate(DocTrees docs) {
        this.docs = docs;
    }

    static Report read(Iterable<? extends JavaFileObject> sources) throws IOException {
        JavacTask task = (JavacTask) ToolProvider.getSystemJavaCompiler()
                .getTask(null, null, problem -> {}, List.of("-proc:none"), null, sources);
        UnitsGate gate = new UnitsGate(DocTrees.instance(task));
        for (CompilationUnitTree unit : task.parse()) {
            gate.scan(unit, null);
        }
        return new Report(gate.doubles, List.copyOf(gate.findings));
    }

    static boolean saysUnit(String text) {
        // The compiler writes a comment back with characters above U+00FF escaped.
        return UNIT.matcher(text.replace("\\u2074", "⁴").replace("\\u207b", "⁻"))
                .find();
    }

    @Override
    public Void visitClass(ClassTree type, Void unused) {
        if (type.getModifiers().getFlags().contains(Modifier.PRIVATE)) {
            return null;
        }
        if (isReachable(getCurrentPath())) {
            components(type).forEach(this::checkParameter);
        }
        return super.visitClass(type, null);
    }

    @Override
    public Void visitMethod(MethodTree method, Void unused) {
        if (isPublic(method.getModifiers().getFlags()) && !isOverride(method) && !isCanonical(method)) {
            if (isDouble(method.getReturnType())) {
                check("returns a double", tag -> tag instanceof ReturnTree);
            }
            method.getParameters().forEach(this::checkParameter);
        }
        return null; // what a body holds is nobody's business outside
    }

    @Override
    public Void visitVariable(VariableTree field, Void unused) {
        Set<Modifier> flags = field.getModifiers().getFlags();
        if (isPublic(flags) && isDouble(field.getType())) {
            check("is a double", tag -> true);
        }
        return null;
    }

    private void checkParameter(VariableTree parameter) {
        if (isDouble(parameter.getType())) {
            String name = parameter.getName().toString();
            check(
                    "takes double " + name,
                    tag -> tag instanceof ParamTree param
                            && !param.isTypeParameter()
                            && param.getName().getName().contentEquals(name));
        }
    }

    private void check(String what, Predicate<DocTree> where) {
        doubles++;
        DocCommentTree comment = docs.getDocCommentTree(getCurrentPath());
        Stream<DocTree> tags = comment == null
                ? Stream.empty()
                : Stream.concat(comment.getFullBody().stream(), comment.getBlockTags().stream());
        if (tags.filter(where).noneMatch(tag -> saysUnit(tag.toString()))) {
            findings.add(place() + " " + what + " without a unit");
        }
    }

    /** The file, the line and the name of what is being looked at. */
    private String place() {
        TreePath path = getCurrentPath();
        CompilationUnitTree unit = path.getCompilationUnit();
        long line = unit.getLineMap().getLineNumber(docs.getSourcePositions().getStartPosition(unit, path.getLeaf()));
        String file = unit.getSourceFile().getName();
        return file + ":" + line + " " + nameOf(path.getLeaf());
    }

    private static String nameOf(Tree tree) {
        if (tree instanceof MethodTree method) {
            return method.getName().toString();
        }
        return tree instanceof VariableTree field
                ? field.getName().toString()
                : ((ClassTree) tree).getSimpleName().toString();
    }

    private boolean isPublic(Set<Modifier> flags) {
        Tree owner = getCurrentPath().getParentPath().getLeaf();
        boolean inInterface = owner.getKind() == Tree.Kind.INTERFACE || owner.getKind() == Tree.Kind.ANNOTATION_TYPE;
        return flags.contains(Modifier.PUBLIC) || (inInterface && !flags.contains(Modifier.PRIVATE));
    }

    /** Public or protected all the way out. */
    private static boolean isReachable(TreePath path) {
        for (TreePath p = path; p != null; p = p.getParentPath()) {
            if (p.getLeaf() instanceof ClassTree type) {
                Set<Modifier> flags = type.getModifiers().getFlags();
                boolean inInterface = p.getParentPath().getLeaf().getKind() == Tree.Kind.INTERFACE;
                if (!flags.contains(Modifier.PUBLIC) && !flags.contains(Modifier.PROTECTED) && !inInterface) {
                    return false;
                }
            }
        }
        return true;
    }

    /** A record says the units of its components once, in its own comment. */
    private boolean isCanonical(MethodTree method) {
        return method.getReturnType() == null
                && getCurrentPath().getParentPath().getLeaf() instanceof ClassTree type
                && type.getKind() == Tree.Kind.RECORD
                && names(components(type)).equals(names(method.getParameters()));
    }

    private static List<VariableTree> components(ClassTree type) {
        return type.getMembers().stream()
                .filter(member -> type.getKind() == Tree.Kind.RECORD && member instanceof VariableTree)
                .map(VariableTree.class::cast)
                .filter(field -> !field.getModifiers().getFlags().contains(Modifier.STATIC))
                .toList();
    }

    private static List<String> names(List<? extends VariableTree> variables) {
        return variables.stream().map(variable -> variable.getName().toString()).toList();
    }

    private static boolean isOverride(MethodTree method) {
        return method.getModifiers().getAnnotations().stream()
                .anyMatch(a -> a.getAnnotationType().toString().equals("Override"));
    }

    private static boolean isDouble(Tree type) {
        boolean[] found = {false};
        new TreeScanner<Void, Void>() {
            @Override
            public Void visitPrimitiveType(PrimitiveTypeTree primitive, Void unused) {
                found[0] |= primitive.getPrimitiveTypeKind() == TypeKind.DOUBLE;
                return null;
            }

            @Override
            public Void visitIdentifier(IdentifierTree identifier, Void unused) {
                found[0] |= BOXES.contains(identifier.getName().toString());
                return null;
            }
        }.scan(type, null);
        return found[0];
    }
}
