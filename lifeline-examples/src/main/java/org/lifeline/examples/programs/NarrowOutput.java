package org.lifeline.examples.programs;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.lifeline.examples.print.WrappedText;

/** Breaks the lines of what an example prints to the width of a terminal; what is shorter goes through as it is. */
final class NarrowOutput extends OutputStream {
    private static final String FURTHER = "    ";

    private final PrintStream out;
    private final ByteArrayOutputStream line = new ByteArrayOutputStream();

    private NarrowOutput(PrintStream out) {
        this.out = out;
    }

    /** The same program with its lines broken. */
    static Programs.Main around(Programs.Main program) {
        return args -> {
            PrintStream before = System.out;
            try (PrintStream narrow = new PrintStream(new NarrowOutput(before), false, StandardCharsets.UTF_8)) {
                System.setOut(narrow);
                program.run(args);
            } finally {
                System.setOut(before);
            }
        };
    }

    @Override
    public void write(int b) {
        if (b == '\n') {
            end();
        } else if (b != '\r') {
            line.write(b);
        }
    }

    private void end() {
        String text = line.toString(StandardCharsets.UTF_8);
        line.reset();
        if (text.codePointCount(0, text.length()) <= WrappedText.COLUMNS) {
            out.println(text);
            return;
        }
        String indent = text.substring(0, text.length() - text.stripLeading().length());
        out.println(indent + WrappedText.hanging(text.strip(), indent + FURTHER));
    }

    @Override
    public void flush() {
        out.flush();
    }

    @Override
    public void close() {
        if (line.size() > 0) {
            end();
        }
        out.flush();
    }
}
