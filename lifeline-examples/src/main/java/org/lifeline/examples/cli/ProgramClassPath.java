package org.lifeline.examples.cli;

import java.io.File;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where the classes of the program come from, for who starts it once more as a process of its own. */
public final class ProgramClassPath {
    private ProgramClassPath() {}

    /**
     * The archives and folders of the program and of its libraries, however this one was started.
     *
     * @return a class path
     */
    public static String text() {
        return Stream.of(
                        "org.lifeline.examples.Main",
                        "org.lifeline.base.Units",
                        "com.fasterxml.jackson.databind.ObjectMapper",
                        "com.fasterxml.jackson.core.JsonFactory",
                        "com.fasterxml.jackson.annotation.JsonInclude",
                        "picocli.CommandLine",
                        "org.apache.commons.math3.util.FastMath",
                        "org.ejml.data.Matrix",
                        "org.ejml.dense.row.CommonOps_DDRM")
                .map(ProgramClassPath::place)
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static String place(String name) {
        try {
            return Path.of(Class.forName(name)
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (ClassNotFoundException | URISyntaxException e) {
            throw new IllegalStateException("a class of the program has no place: " + name, e);
        }
    }
}
