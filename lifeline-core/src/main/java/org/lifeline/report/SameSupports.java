package org.lifeline.report;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/** What a report is made of must be about one line: supports with the same names in the same order. */
final class SameSupports {
    private SameSupports() {}

    static void ofArrest(String what, LifelineDesign design, ArrestResult arrest) {
        require(
                what,
                "an arrest",
                design,
                arrest.supports().stream().map(SupportReaction::id).toList());
    }

    static void require(String what, String kind, LifelineDesign design, List<String> other) {
        List<String> names = names(design);
        if (!other.equals(names)) {
            throw new IllegalArgumentException(
                    what + ": " + other.size() + " supports: must be " + kind + " of the design's line, which has "
                            + names.size() + " supports with their names in the same order");
        }
    }

    static List<String> names(LifelineDesign design) {
        return design.line().supports().stream().map(Support::id).toList();
    }
}
