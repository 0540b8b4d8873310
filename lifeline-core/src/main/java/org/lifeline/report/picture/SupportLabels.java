package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.TextWidth;

/** Finds rows for labels above a line, from the lowest up, so that none runs into another. */
final class SupportLabels {
    /** Least distance between two labels in one row [user units]. */
    private static final double GAP = 12;

    /**
     * A label in its place.
     *
     * @param left left edge [user units]
     * @param row row of its last line, from 0 upward
     * @param lines its lines, from the top
     */
    record Label(double left, int row, List<String> lines) {}

    private final Range room;

    /** Where the labels end so far, in each row [user units]. */
    private final List<Double> free = new ArrayList<>();

    /**
     * No labels yet.
     *
     * @param room left and right edge [user units]
     */
    SupportLabels(Range room) {
        this.room = room;
    }

    /** How many rows there are so far. */
    int rows() {
        return free.size();
    }

    /**
     * Places a label. Labels come in the order in which they stand from left to right.
     *
     * @param middle where its middle should be [user units]
     * @param lines its lines, from the top
     * @return the label
     */
    Label place(double middle, List<String> lines) {
        double wide = lines.stream().mapToDouble(TextWidth::of).max().orElse(0);
        double left = Math.min(Math.max(middle - wide / 2, room.from()), room.to() - wide);
        int row = 0;
        while (isBlocked(row, lines.size(), left)) {
            row++;
        }
        for (int k = row; k < row + lines.size(); k++) {
            while (free.size() <= k) {
                free.add(0.0);
            }
            free.set(k, left + wide + GAP);
        }
        return new Label(left, row, List.copyOf(lines));
    }

    private boolean isBlocked(int row, int lines, double left) {
        for (int k = row; k < Math.min(free.size(), row + lines); k++) {
            if (free.get(k) > left) {
                return true;
            }
        }
        return false;
    }
}
