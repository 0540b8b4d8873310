package org.lifeline.report.document;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a calculation belongs to and who answers for it: printed on the first page of a report, document number and revision
 * on every page. Every text is optional; it says nothing about what was computed.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ProjectData {
    /**
     * A text of the project block.
     *
     * @since 1.0.0
     */
    public enum Item {
        /** The project, for example the building. */
        NAME("name", "Project"),
        /** Who ordered the calculation. */
        CLIENT("client", "Client"),
        /** Where the line stands. */
        LOCATION("location", "Location"),
        /** Which line of the project it is. */
        LINE("line", "Line"),
        /** Number of the calculation as a document. */
        DOCUMENT("document", "Document number"),
        /** Revision of the document. */
        REVISION("revision", "Revision"),
        /** Who made the calculation. */
        PREPARED_BY("preparedBy", "Prepared by"),
        /** Who checked it. */
        CHECKED_BY("checkedBy", "Checked by"),
        /** Who approved it. */
        APPROVED_BY("approvedBy", "Approved by"),
        /** Date of issue, in the words of who issues it. */
        DATE("date", "Date");

        private final String key;
        private final String label;

        Item(String key, String label) {
            this.key = key;
            this.label = label;
        }

        /**
         * Its key in a design file.
         *
         * @return the key
         */
        public String key() {
            return key;
        }

        /**
         * Its name in a report.
         *
         * @return the name
         */
        public String label() {
            return label;
        }
    }

    /**
     * A revision of the document.
     *
     * @param revision its mark
     * @param date its date, in the words of who issues it
     * @param description what changed
     * @param by who made it
     * @since 1.0.0
     */
    public record Revision(String revision, String date, String description, String by) {}

    private static final ProjectData NONE = new ProjectData(new EnumMap<>(Item.class), List.of());

    private final Map<Item, String> texts;
    private final List<Revision> revisions;

    private ProjectData(Map<Item, String> texts, List<Revision> revisions) {
        this.texts = texts;
        this.revisions = revisions;
    }

    /**
     * Of nothing that is known.
     *
     * @return empty data
     */
    public static ProjectData none() {
        return NONE;
    }

    /**
     * The same with another text.
     *
     * @param item which text
     * @param text the text; blank to leave it open
     * @return the new data
     */
    public ProjectData with(Item item, String text) {
        Map<Item, String> all = new EnumMap<>(Item.class);
        all.putAll(texts);
        all.put(item, text);
        return new ProjectData(all, revisions);
    }

    /**
     * The same with a revision more.
     *
     * @param revision the revision
     * @return the new data
     */
    public ProjectData with(Revision revision) {
        List<Revision> all = new ArrayList<>(revisions);
        all.add(revision);
        return new ProjectData(texts, List.copyOf(all));
    }

    /**
     * A text.
     *
     * @param item which text
     * @return the text; empty if it is open
     */
    public String text(Item item) {
        return texts.getOrDefault(item, "").strip();
    }

    /**
     * The revisions of the document.
     *
     * @return the revisions in the order given; unmodifiable
     */
    public List<Revision> revisions() {
        return revisions;
    }

    /**
     * Tells whether nothing is known.
     *
     * @return true if every text is blank and there is no revision
     */
    public boolean isEmpty() {
        return revisions.isEmpty() && texts.values().stream().allMatch(String::isBlank);
    }
}
