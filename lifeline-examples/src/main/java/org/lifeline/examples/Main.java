package org.lifeline.examples;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.lifeline.examples.cli.CommandLines;

/** The program: {@code analyze FILE} computes a design; without arguments it computes the demonstration design. */
public final class Main {
    private Main() {}

    /**
     * Runs the program.
     *
     * @param args the command line; see {@code help}
     */
    public static void main(String[] args) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
        int code = CommandLines.run(out, err, args);
        out.flush();
        err.flush();
        if (code != 0) {
            System.exit(code);
        }
    }
}
