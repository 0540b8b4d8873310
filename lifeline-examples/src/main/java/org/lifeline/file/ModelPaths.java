package org.lifeline.file;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.lifeline.base.Violation;

/**
 * Paths of violations in the words of a design file. The model names the methods of its builders, for example {@code
 * support[1].position}; the file names its members, {@code supports[1].position}.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ModelPaths {
    private static final Map<Pattern, String> MEMBERS = members();
    private static final Map<Pattern, String> OF_THE_DESIGN = ofTheDesign();

    private ModelPaths() {}

    private static Map<Pattern, String> members() {
        Map<Pattern, String> map = new LinkedHashMap<>();
        put(map, "(support|endAnchor|intermediateAnchor)(?=\\[|$)", "supports");
        put(map, "worker(?=\\[)", "workers");
        put(map, "fall(?=\\[)", "falls");
        put(map, "faller(?=\\[|$)", "fallers");
        put(map, "temperature(?=\\[)", "service.temperatures");
        put(map, "breakingStrength$", "minimumBreakingStrength");
        put(map, "momentOfResistance(?=\\.)", "elasticMomentOfResistance");
        map.put(Pattern.compile("\\.(at|place)\\.(?=(span|station|support)$)"), ".");
        return map;
    }

    private static Map<Pattern, String> ofTheDesign() {
        Map<Pattern, String> map = new LinkedHashMap<>();
        map.put(Pattern.compile("^workingFloor$"), "clearance.workingFloor");
        map.put(Pattern.compile("^rescuerMass$"), "rescue.rescuerMass");
        map.put(Pattern.compile("^(pretension|horizontalTension|initialSag|unstretchedLength)$"), "installed.$1");
        return map;
    }

    private static void put(Map<Pattern, String> map, String step, String member) {
        map.put(Pattern.compile("(?<=^|\\.)" + step), member);
    }

    /**
     * A path in the words of a design file.
     *
     * @param path a path in the words of the model, from the design or its line on
     * @return the path in the file
     */
    public static String inFile(String path) {
        return replaced(OF_THE_DESIGN, members(path));
    }

    /** A path below a part of the design in the words of the file. */
    static String members(String path) {
        return replaced(MEMBERS, path);
    }

    private static String replaced(Map<Pattern, String> names, String path) {
        String at = path;
        for (Map.Entry<Pattern, String> each : names.entrySet()) {
            at = each.getKey().matcher(at).replaceAll(each.getValue());
        }
        return at;
    }

    /**
     * A violation of the model in the words of a design file.
     *
     * @param found the violation
     * @return the same with its path in the file
     */
    public static Violation inFile(Violation found) {
        return found.at(inFile(found.path()));
    }
}
