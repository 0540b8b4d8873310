package org.lifeline.design.study;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.base.Violations;
import org.lifeline.design.variable.DesignVariable;

/**
 * Rows of a study as comma-separated values (RFC 4180): a header, then one line for each case with its number, the
 * variables, the responses and the reason of a failure. Lines end with CR LF. Numbers are written in full, with a point; a
 * response without a value is empty.
 *
 * <p>Texts are made harmless by {@link InertText#csv}: reasons name workers and supports as a file names them. Not
 * thread-safe.
 *
 * @since 1.0.0
 */
public final class StudyCsv implements RowSink {
    private final Appendable out;
    private final int outputs;

    private StudyCsv(Appendable out, int outputs) {
        this.out = out;
        this.outputs = outputs;
    }

    /**
     * Writes the header.
     *
     * @param out where to write
     * @param variables the variables of the study
     * @param responses its responses
     * @return a sink for the rows
     * @throws UncheckedIOException if it cannot be written
     */
    public static StudyCsv begin(Appendable out, List<DesignVariable> variables, List<Response> responses) {
        Violations.required("out", out);
        Violations.requiredAll("variables", variables);
        Violations.requiredAll("responses", responses);
        StudyCsv csv = new StudyCsv(out, responses.size());
        List<String> cells = new ArrayList<>(List.of("case"));
        variables.forEach(v -> cells.add(InertText.csv(v.toString())));
        responses.forEach(r -> cells.add(InertText.csv(r.toString())));
        cells.add("failure");
        csv.line(cells);
        return csv;
    }

    @Override
    public void take(StudyRow row) {
        List<String> cells = new ArrayList<>();
        cells.add(Long.toString(row.number()));
        for (double x : row.inputs()) {
            cells.add(number(x));
        }
        for (int i = 0; i < outputs; i++) {
            cells.add(number(row.output(i)));
        }
        cells.add(InertText.csv(row.reason()));
        line(cells);
    }

    private void line(List<String> cells) {
        try {
            out.append(String.join(",", cells)).append("\r\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "" : Double.toString(value);
    }
}
