package org.lifeline.report.section;

import java.util.LinkedHashMap;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.chart.DescentPicture;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.report.picture.ElevationPicture;
import org.lifeline.report.picture.PlanPicture;

/**
 * All pictures of an arrest.
 *
 * @since 1.0.0
 */
public final class ArrestPictures {
    private ArrestPictures() {}

    /**
     * Draws an arrest: the elevation, the plan where the line turns, load, tension and energy against descent.
     *
     * @param design the design, for the obstructions
     * @param arrest the arrest
     * @param choice the units
     * @return the pictures by a short name that can be part of a file name
     */
    public static Map<String, Picture> of(LifelineDesign design, ArrestResult arrest, UnitChoice choice) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        pictures.put(
                "elevation", ElevationPicture.draw(arrest, design.clearance().obstructions(), choice));
        if (PlanPicture.turns(arrest.line())) {
            pictures.put("plan", PlanPicture.draw(arrest, choice));
        }
        if (arrest.motion().isEmpty()) {
            pictures.put("descent", DescentPicture.draw(arrest, choice));
        }
        return pictures;
    }
}
