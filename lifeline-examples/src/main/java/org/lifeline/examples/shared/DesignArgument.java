package org.lifeline.examples.shared;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.QuantityText;
import org.lifeline.examples.cli.AnalyzeCommand;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.output.FileNames;

/** Reads what the programs on design files are given: the file, and quantities with their units. */
public final class DesignArgument {
    private DesignArgument() {}

    /**
     * The design file that is named first, or the demonstration design.
     *
     * @param args arguments of a program
     * @return the design file
     * @throws IOException if it cannot be read
     */
    public static DesignFile read(String[] args) throws IOException {
        if (args.length > 0) {
            try (InputStream in = Files.newInputStream(FileNames.path(args[0]))) {
                return new DesignReader().read(in.readNBytes(DesignReader.LARGEST_FILE + 1));
            }
        }
        try (InputStream in = AnalyzeCommand.class.getResourceAsStream(AnalyzeCommand.DEMO)) {
            if (in == null) {
                throw new IllegalStateException("the demonstration design is missing from the program");
            }
            return new DesignReader().read(in.readAllBytes());
        }
    }

    /** A quantity in SI, by its unit. */
    public static double quantity(String text, Dimension dimension) {
        try {
            return QuantityText.parse(text, dimension).si();
        } catch (QuantityText.RuleBroken e) {
            throw new IllegalArgumentException('"' + text + "\" " + e.rule(), e);
        }
    }
}
