package org.lifeline.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** A table beside a test: fields with semicolons between them, after lines of remarks and one of headings. */
public final class EffortTable {
    private EffortTable() {}

    /** The fields of each row of a table beside a class. */
    public static List<List<String>> rows(Class<?> test, String file) {
        try (InputStream in = Objects.requireNonNull(test.getResourceAsStream(file))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> List.of(line.split(";", -1)))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
