package org.lifeline.design.criteria;

import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** One gripped fall in the middle of the first span, and the verdict of a criterion on it. */
final class MiddleFall {
    private MiddleFall() {}

    static LifelineDesign design(int spans) {
        return Designs.fallInTheMiddle(Designs.design(spans, Passage.friction(0.12), Attachment.GRIPPED));
    }

    static Extremes analyse(LifelineDesign design) {
        return DesignAnalysis.withDefaults().solve(design).extremes();
    }

    static CriterionResult check(String id, LifelineDesign design) {
        return Criteria.of(id).orElseThrow().check(analyse(design));
    }
}
