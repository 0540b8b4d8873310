package org.lifeline.design.criteria;

import java.util.List;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.Extremes;

/**
 * A criterion: what is compared with what, and where that comes from.
 *
 * <p>Immutable and thread-safe. Built-in criteria are in {@link Criteria}; {@link #stated} makes one of a design's own.
 *
 * @since 1.0.0
 */
public final class Criterion {
    private final String id;
    private final String title;
    private final Source source;
    private final Requirement requirement;

    Criterion(String id, String title, Source source, Requirement requirement) {
        this.id = id;
        this.title = title;
        this.source = source;
        this.requirement = requirement;
    }

    /**
     * A limit that the design states itself.
     *
     * @param id name of the criterion, not blank
     * @param quantity what is limited
     * @param limit the limit [unit of the quantity]; at most or at least, as {@link CheckedQuantity#limitType()} says
     * @param citation where the limit comes from
     * @return the criterion
     * @throws org.lifeline.base.InvalidInputException if the id is blank, or the limit is not finite or negative
     */
    public static Criterion stated(String id, CheckedQuantity quantity, double limit, String citation) {
        Violations.required("quantity", quantity);
        Violations.required("citation", citation);
        return composed(id, Requirement.limit(quantity, limit), citation);
    }

    /**
     * A requirement that the design states itself: of several limits, for each anchor, with a factor on a load.
     *
     * @param id name of the criterion, not blank
     * @param requirement what it asks for
     * @param citation where it comes from
     * @return the criterion
     * @throws org.lifeline.base.InvalidInputException if the id is blank
     */
    public static Criterion composed(String id, Requirement requirement, String citation) {
        Violations.required("requirement", requirement);
        Violations.required("citation", citation);
        new Violations().named("id", id).throwIfAny();
        return new Criterion(id, requirement.words(), Source.stated(citation), requirement);
    }

    /**
     * Name of the criterion, as it stands in a design file.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * What it asks for, in words.
     *
     * @return the title
     */
    public String title() {
        return title;
    }

    /**
     * What it asks for, as data.
     *
     * @return the requirement
     */
    public Requirement requirement() {
        return requirement;
    }

    /**
     * Where it comes from.
     *
     * @return document and clause, jurisdiction, mark
     */
    public Source source() {
        return source;
    }

    /**
     * The comparisons in it, as data. How they are joined (all, any, for each worker) stands in the title.
     *
     * @return the limits; empty for a fact of the trade that is only cited; unmodifiable
     */
    public List<Limit> limits() {
        return requirement.limits();
    }

    /**
     * Checks the criterion against the worst values of a design.
     *
     * @param extremes worst values, of stated falls or of an envelope
     * @return demand, capacity, ratio and the case that governs
     */
    public CriterionResult check(Extremes extremes) {
        Violations.required("extremes", extremes);
        return new CriterionResult(this, requirement.check(title, new CheckedDesign(extremes)));
    }

    @Override
    public String toString() {
        return id + ": " + title;
    }
}
