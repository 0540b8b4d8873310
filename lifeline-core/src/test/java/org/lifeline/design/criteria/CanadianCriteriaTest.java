package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** Rules of Ontario and British Columbia as recalled: a person must check them in the documents before relying on them. */
class CanadianCriteriaTest {
    private static Extremes extremes() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
        return DesignAnalysis.withDefaults().solve(d).extremes();
    }

    /** O. Reg. 213/91: peak fall arrest force at most 8 kN (recalled). The absorber of the line gives 6 kN. */
    @Test
    void ontarioLimitsTheArrestForce() {
        Criterion c = Criteria.of("on-maf").orElseThrow();
        CriterionResult r = c.check(extremes());
        assertThat(r.isMet()).isTrue();
        assertThat(r.comparisons().get(0).demand()).isBetween(5999.0, 6001.0);
        assertThat(r.comparisons().get(0).capacity()).isEqualTo(8000);
        assertThat(c.source().kind()).isEqualTo(SourceKind.RECALLED);
    }

    /** OHSR Part 11: 22 kN for each worker, or twice the load (recalled). The anchors of the line have 45 kN. */
    @Test
    void britishColumbiaAsksForStrongAnchors() {
        Criterion c = Criteria.of("bc-anchor").orElseThrow();
        assertThat(c.check(extremes()).isMet()).isTrue();
        assertThat(c.source().kind()).isEqualTo(SourceKind.RECALLED);
        // What is only recalled is asked for by its id; it never comes with its jurisdiction.
        assertThat(Criteria.in(Jurisdiction.BRITISH_COLUMBIA)).isEmpty();
        assertThat(Criteria.withoutRecalled(Criteria.builtIn()))
                .doesNotContain(c)
                .doesNotContain(Criteria.of("on-maf").orElseThrow());
    }
}
