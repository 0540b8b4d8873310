package org.lifeline.examples.shared;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.lifeline.base.Violations;
import org.lifeline.file.output.FileNames;
import org.lifeline.file.output.OutputSet;

/** The arguments of a program on a design: {@value #OVERWRITE} and the other options may stand anywhere among them. */
public final class FileArguments {
    /** Lets a program replace also files that are no former outputs of its own; designs never. */
    public static final String OVERWRITE = "--overwrite";

    /** Looks at the stated falls alone instead of moving them along the line. */
    public static final String STATED_FALLS = "--stated-falls";

    /** Does not confirm ends in time. */
    public static final String NO_MOTION = "--no-motion";

    private final List<String> plain;
    private final Set<String> options;

    private FileArguments(List<String> plain, Set<String> options) {
        this.plain = plain;
        this.options = options;
    }

    public static FileArguments of(String... args) {
        List<String> plain = new ArrayList<>(List.of(args));
        Set<String> options = new HashSet<>();
        for (String each : List.of(OVERWRITE, STATED_FALLS, NO_MOTION)) {
            if (plain.removeIf(each::equals)) {
                options.add(each);
            }
        }
        return new FileArguments(List.copyOf(plain), Set.copyOf(options));
    }

    public boolean has(String option) {
        return options.contains(option);
    }

    /** The arguments without the options. */
    public String[] plain() {
        return plain.toArray(new String[0]);
    }

    /** The outputs of a program whose first argument, if there is one, is the design that it reads. */
    public OutputSet outputsOfDesign() {
        return plain.isEmpty()
                ? OutputSet.of(has(OVERWRITE))
                : OutputSet.of(has(OVERWRITE), new Path[] {FileNames.path(plain.get(0))});
    }

    /** The outputs of a program that reads nothing. */
    public OutputSet outputs() {
        return OutputSet.of(has(OVERWRITE));
    }

    /**
     * A number of cases; looked at before a file for them is begun.
     *
     * @param text the argument
     * @return the number, at least 1
     * @throws org.lifeline.base.InvalidInputException if it is smaller
     * @throws IllegalArgumentException if it is no whole number
     */
    public static long cases(String text) {
        try {
            long cases = Long.parseLong(text);
            new Violations().atLeast("cases", cases, 1).throwIfAny();
            return cases;
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("number of cases: \"" + text + "\": must be a whole number", e);
        }
    }
}
