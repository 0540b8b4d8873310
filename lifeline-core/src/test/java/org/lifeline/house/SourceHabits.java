package org.lifeline.house;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Habits that can be read off the source files. */
final class SourceHabits {
    private static final int LONGEST_CLASS = 600; // lines
    private static final int LARGEST_PACKAGE = 20; // types
    private static final String PACKAGE_INFO = "package-info.java";

    /** Functions that {@code Math} may round one way on one Java machine and another way on another. */
    private static final Pattern LOOSE = Pattern.compile("(?<!Strict)\\bMath(\\.|::)"
            + "(sin|cos|tan|asin|acos|atan|atan2|exp|log|log10|pow|sinh|cosh|tanh|hypot|expm1|log1p|cbrt)\\b");

    /** Functions and formats that other platforms than the JVM compute with fewer digits, or lack. */
    private static final Pattern PLATFORM = Pattern.compile(
            "StrictMath\\.(pow|cbrt|sinh|cosh|tanh|hypot|expm1|log1p)\\b|\"[^\"\\n]*%[-0-9.]*[gGaA]\\b");

    private static final Pattern EXPORTED = Pattern.compile("(?m)^ *exports ([\\w.]+);");

    /** Indentation, "public", kind and name of a type on the outside or one level in. */
    private static final Pattern TYPE =
            Pattern.compile("( {0,4})(public )?(?:static |final |abstract |sealed |non-sealed )*"
                    + "(class|@?interface|enum|record) (\\w+)");

    private SourceHabits() {}

    /** Functions of {@code Math} whose last digit is not laid down: the same line gives other digits on another machine. */
    static List<String> looseFunctions(Path root) throws IOException {
        List<String> findings = new ArrayList<>();
        for (Path file : javaFiles(root)) {
            LOOSE.matcher(Files.readString(file))
                    .results()
                    .forEach(m -> findings.add(file + " calls " + m.group() + "; StrictMath has it, too"));
        }
        return findings;
    }

    /** What a kernel that also runs in a browser takes from {@code Elementary} and {@code SignificantDigits}. */
    static List<String> platformFindings(Path root) throws IOException {
        List<String> findings = new ArrayList<>();
        for (Path file : javaFiles(root)) {
            if (!file.endsWith("Elementary.java")) {
                PLATFORM.matcher(Files.readString(file))
                        .results()
                        .forEach(m -> findings.add(file + " has " + m.group() + "; not every platform has it in full"));
            }
        }
        return findings;
    }

    /** Files under a source root. */
    static List<Path> javaFiles(Path root) throws IOException {
        try (Stream<Path> tree = Files.walk(root)) {
            return tree.filter(p -> p.toString().endsWith(".java")).sorted().toList();
        }
    }

    /** What breaks a habit that main code and tests share: no author tags, no file that is two classes in one. */
    static List<String> findings(Path root) throws IOException {
        List<String> findings = new ArrayList<>();
        for (Path file : javaFiles(root)) {
            List<String> lines = Files.readAllLines(file);
            if (lines.stream().anyMatch(line -> line.strip().startsWith("* @author"))) {
                findings.add(file + " names an author");
            }
            if (lines.size() > LONGEST_CLASS) {
                findings.add(file + " has " + lines.size() + " lines, more than " + LONGEST_CLASS);
            }
        }
        return findings;
    }

    /** Types that a module hands out without saying since which version: those of the packages that its descriptor exports. */
    static List<String> undatedTypes(Path module) throws IOException {
        List<String> findings = new ArrayList<>();
        Matcher exported = EXPORTED.matcher(Files.readString(module.resolve("src/main/module/module-info.java")));
        while (exported.find()) {
            Path folder =
                    module.resolve("src/main/java").resolve(exported.group(1).replace('.', '/'));
            for (Path file : javaFiles(folder)) {
                if (folder.equals(file.getParent())) {
                    undated(Files.readAllLines(file)).forEach(t -> findings.add(file + " does not date " + t));
                }
            }
        }
        return findings;
    }

    /** Names of public types whose comment lacks {@code @since}; in an interface a nested type is public unsaid. */
    private static List<String> undated(List<String> lines) {
        List<String> names = new ArrayList<>();
        boolean inInterface = false;
        StringBuilder comment = new StringBuilder();
        for (String line : lines) {
            String text = line.strip();
            Matcher type = TYPE.matcher(line);
            boolean declared = type.lookingAt() && (type.group(2) != null || (inInterface && line.startsWith("    ")));
            if (declared && comment.indexOf("@since ") < 0) {
                names.add(type.group(4));
            }
            inInterface |= declared && type.group(1).isEmpty() && type.group(3).equals("interface");
            if (text.startsWith("/**")) {
                comment.setLength(0);
            }
            if (text.startsWith("/**") || text.startsWith("*")) {
                comment.append(text).append('\n');
            } else if (!text.startsWith("@")) {
                comment.setLength(0);
            }
        }
        return names;
    }

    /** Packages that hold more types than a reader keeps in mind: they are two duties. Nested types are their owner's. */
    static List<String> crowdedPackages(Path root) throws IOException {
        Map<Path, Integer> types = new TreeMap<>();
        for (Path file : javaFiles(root)) {
            if (!file.endsWith(PACKAGE_INFO)) {
                types.merge(file.getParent(), 1, Integer::sum);
            }
        }
        return types.entrySet().stream()
                .filter(each -> each.getValue() > LARGEST_PACKAGE)
                .map(each -> each.getKey() + " holds " + each.getValue() + " types, more than " + LARGEST_PACKAGE)
                .toList();
    }

    /** Packages without a package-info that says what they hold and makes them null-marked. */
    static List<String> packageFindings(Path root) throws IOException {
        List<String> findings = new ArrayList<>();
        for (Path folder :
                javaFiles(root).stream().map(Path::getParent).distinct().toList()) {
            Path info = folder.resolve(PACKAGE_INFO);
            if (!Files.exists(info)) {
                findings.add(folder + " has no " + PACKAGE_INFO);
                continue;
            }
            String text = Files.readString(info);
            if (!text.startsWith("/**")) {
                findings.add(info + " says nothing about the package");
            }
            if (!text.contains("\n@NullMarked\n")) {
                findings.add(info + " lacks @NullMarked");
            }
        }
        return findings;
    }
}
