package org.lifeline.design.criteria;

import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * Where a value comes from. A published value names author or body, work, year and place; one without all four is refused.
 *
 * <p>Immutable and thread-safe.
 *
 * @param body author, or the body that published the work; empty for common practice and for what a design states
 * @param work the work with its year and the place in it
 * @param jurisdiction where it holds
 * @param kind whether the value was read there
 * @since 1.0.0
 */
public record Source(String body, Work work, Jurisdiction jurisdiction, SourceKind kind) {
    /**
     * A work that is cited.
     *
     * @param title title of the work, or the words of a source that is not published
     * @param year year or edition; {@code "in force"} for a regulation that is read as it stands
     * @param place clause, section, chapter or page
     * @since 1.0.0
     */
    public record Work(String title, String year, String place) {}

    /**
     * Checks that a published value can be found.
     *
     * @param body author, or the body that published the work
     * @param work the work with its year and the place in it
     * @param jurisdiction where it holds
     * @param kind whether the value was read there
     * @throws org.lifeline.base.InvalidInputException if a published source lacks body, title, year or place
     */
    public Source {
        Violations.required("body", body);
        Violations.required("work", work);
        Violations.required("jurisdiction", jurisdiction);
        Violations.required("kind", kind);
        if (kind == SourceKind.PUBLISHED) {
            Violations v = new Violations();
            stated(v, "body", body);
            stated(v, "title", work.title());
            stated(v, "year", work.year());
            stated(v, "place", work.place());
            v.throwIfAny();
        }
    }

    private static void stated(Violations v, String name, String value) {
        v.require(!value.isBlank(), name, GivenValue.quoted(value), InputRule.PUBLISHED_BY_NOBODY);
    }

    /**
     * Common practice, for which there is no source.
     *
     * @return the source
     */
    public static Source commonPractice() {
        return new Source(
                "", new Work("common practice, no source", "", ""), Jurisdiction.PRACTICE, SourceKind.COMMON_PRACTICE);
    }

    /**
     * What a design states itself.
     *
     * @param text where its limit comes from, in the words of the design
     * @return the source
     */
    public static Source stated(String text) {
        Violations.required("text", text);
        return new Source("", new Work(text, "", ""), Jurisdiction.DESIGN, SourceKind.STATED);
    }

    /**
     * The source in one line.
     *
     * @return body, title, year and place, as far as there are
     */
    public String citation() {
        StringBuilder b = new StringBuilder(body);
        for (String each : new String[] {work.title(), work.year(), work.place()}) {
            if (!each.isEmpty()) {
                b.append(b.isEmpty() ? "" : ", ").append(each);
            }
        }
        return b.toString();
    }
}
