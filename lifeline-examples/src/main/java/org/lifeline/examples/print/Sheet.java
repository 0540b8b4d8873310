package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;

/** Lines of text with headings, tables and wrapped paragraphs. Not thread-safe. */
final class Sheet {
    static final int WIDTH = 110;

    private final StringBuilder text = new StringBuilder();
    private int section;

    /** A numbered heading. */
    void section(String title) {
        section++;
        text.append('\n').append(section).append("  ").append(title).append('\n');
        text.append("=".repeat(WIDTH)).append('\n');
    }

    int sectionNumber() {
        return section;
    }

    void heading(String title) {
        text.append('\n').append(title).append('\n');
        text.append("-".repeat(Math.min(WIDTH, width(title)))).append('\n');
    }

    void line(String line) {
        text.append(line.stripTrailing()).append('\n');
    }

    void blank() {
        text.append('\n');
    }

    /** A paragraph, wrapped at blanks; the first line starts with {@code lead}, the others are indented as far. */
    void paragraph(String lead, String words) {
        StringBuilder line = new StringBuilder(lead);
        boolean fresh = true;
        for (String word : words.split(" ", -1)) {
            if (!fresh && width(line) + 1 + width(word) > WIDTH) {
                line(line.toString());
                line = new StringBuilder(" ".repeat(width(lead)));
                fresh = true;
            }
            line.append(fresh ? "" : " ").append(word);
            fresh = false;
        }
        line(line.toString());
    }

    /**
     * A table.
     *
     * @param alignment one letter for each column: l or r
     * @param rows the rows, the first of them the heads; shorter rows end early
     */
    void table(String alignment, List<List<String>> rows) {
        int[] widths = new int[alignment.length()];
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                widths[i] = Math.max(widths[i], width(row.get(i)));
            }
        }
        for (int r = 0; r < rows.size(); r++) {
            StringBuilder line = new StringBuilder("  ");
            List<String> row = rows.get(r);
            for (int i = 0; i < row.size(); i++) {
                String pad = " ".repeat(widths[i] - width(row.get(i)));
                line.append(alignment.charAt(i) == 'r' ? pad + row.get(i) : row.get(i) + pad)
                        .append("  ");
            }
            line(line.toString());
            if (r == 0) {
                int all = 0;
                for (int w : widths) {
                    all += w + 2;
                }
                line("  " + "-".repeat(Math.max(0, all - 2)));
            }
        }
    }

    /** A row for {@link #table}, without the cells that are null. */
    static List<String> row(List<String> cells, boolean[] shown) {
        List<String> row = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            if (shown[i]) {
                row.add(cells.get(i));
            }
        }
        return row;
    }

    private static int width(CharSequence s) {
        return (int) s.codePoints()
                .filter(c -> Character.getType(c) != Character.NON_SPACING_MARK)
                .count();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
