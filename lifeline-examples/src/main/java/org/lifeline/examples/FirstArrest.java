package org.lifeline.examples;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** A line of two spans, assessed: the example at the top of README.md. */
public final class FirstArrest {
    private FirstArrest() {}

    /**
     * Prints what governs anywhere on the line, and two criteria.
     *
     * @param args none
     */
    public static void main(String[] args) {
        // README
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(meganewtons(3.3))
                        .build())
                .endAnchor("north", Point.of(0, 0, 12.4))
                .intermediateAnchor("post", Point.of(12, 0, 12.4), Passage.friction(0.12))
                .endAnchor("south", Point.of(21, 0, 12.4))
                .pretension(kN(1.5))
                .build();
        PersonalAbsorber absorber = PersonalAbsorber.builder()
                .clearanceForce(kN(3.2))
                .maximumForce(kN(6))
                .maximumExtension(1.2)
                .initialStiffness(kNPerMetre(100))
                .build();
        Connection lanyard = Connection.lanyard(1.8, absorber);
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(10.9)
                .connection(lanyard)
                .build();
        Fall fall = Fall.builder("middle of span 1")
                .at(Place.of(1, 6))
                .faller(worker)
                .build();
        LifelineDesign design = LifelineDesign.builder("gallery")
                .line(line)
                .worker(worker)
                .fall(fall)
                .build();
        List<Criterion> criteria = List.of(
                Criteria.of("us-osha-maf").orElseThrow(),
                Criteria.of("us-osha-free-fall").orElseThrow());
        // The fall moved along the whole line, by energy balance and in time.
        AssessmentResult result =
                Assessment.withDefaults().withCriteria(criteria).solve(design);
        for (String name : List.of("endAnchorLoad", "arrestForce", "requiredBelowLine")) {
            result.governing(name).ifPresent(System.out::println);
        }
        for (AssessedCriterion each : result.criteria()) {
            System.out.println(each.result());
        }
        // README
    }
}
