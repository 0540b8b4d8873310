package org.lifeline.examples.programs;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.file.output.FileNames;
import org.lifeline.file.output.OutputSet;

/** The arguments of a program that writes files: {@value #OVERWRITE} may stand anywhere among them. */
final class FileArguments {
    /** Lets a program replace also files that are no former outputs of its own; designs never. */
    static final String OVERWRITE = "--overwrite";

    private final List<String> plain;
    private final boolean overwrite;

    private FileArguments(List<String> plain, boolean overwrite) {
        this.plain = plain;
        this.overwrite = overwrite;
    }

    static FileArguments of(String... args) {
        List<String> plain = new ArrayList<>(List.of(args));
        boolean overwrite = plain.removeIf(OVERWRITE::equals);
        return new FileArguments(List.copyOf(plain), overwrite);
    }

    /** The arguments without the option. */
    String[] plain() {
        return plain.toArray(new String[0]);
    }

    /** The outputs of a program whose first argument, if there is one, is the design that it reads. */
    OutputSet outputsOfDesign() {
        return plain.isEmpty()
                ? OutputSet.of(overwrite)
                : OutputSet.of(overwrite, new Path[] {FileNames.path(plain.get(0))});
    }

    /** The outputs of a program that reads nothing. */
    OutputSet outputs() {
        return OutputSet.of(overwrite);
    }
}
