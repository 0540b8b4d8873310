package org.lifeline.design.occupancy;

import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** Crews on spans that the cable is clamped between, and what is asked of the anchors. */
final class Crews {
    private Crews() {}

    /** One worker for each mass [kg]. */
    static LifelineDesign design(int spans, double... masses) {
        LifelineDesign.Builder b = LifelineDesign.builder("crew").line(Designs.line(spans, Passage.clamped()));
        for (int i = 0; i < masses.length; i++) {
            b.worker(Designs.worker("W" + i, Attachment.GRIPPED).withMass(masses[i]));
        }
        return b.build();
    }

    /** The load on an end anchor at most [N]. */
    static Criterion anchors(double limit) {
        return Criterion.stated("anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), limit, "brief 1");
    }
}
