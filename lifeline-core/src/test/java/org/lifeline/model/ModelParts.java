package org.lifeline.model;

import org.lifeline.base.Point;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Parts from which the tests of the model are put together: a line of 5, 10 and 12 m, a worker, a fall. */
final class ModelParts {
    static final LoadingCurve SPRING = LoadingCurve.spring(5e4);
    static final Cable CABLE =
            Cable.builder().massPerLength(0.5).axialStiffness(4.9e6).build();

    private ModelParts() {}

    /** Runs 5 (3, 4), 10 and 12 m; rises 1, -0.5 and 0 m from 12 m on. */
    static Lifeline.Builder threeSpans() {
        return Lifeline.builder()
                .cable(CABLE)
                .endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("post 1", Point.of(3, 4, 13), Passage.friction(0.1))
                .intermediateAnchor("post 2", Point.of(3, 14, 12.5), Passage.free())
                .endAnchor("south", Point.of(15, 14, 12.5))
                .pretension(1500);
    }

    static PersonalAbsorber absorber() {
        return PersonalAbsorber.builder()
                .clearanceForce(3000)
                .maximumForce(6000)
                .maximumExtension(1.2)
                .initialStiffness(1e5)
                .build();
    }

    static Worker.Builder worker(String id) {
        return Worker.builder(id).mass(100).walkingLevel(10).connection(Connection.plainLanyard(1.8, SPRING));
    }

    static Fall.Builder fall(Worker... workers) {
        Fall.Builder b = Fall.builder("f").at(Place.of(1, 2));
        for (Worker each : workers) {
            b.faller(each);
        }
        return b;
    }

    static LifelineDesign.Builder design(Worker... workers) {
        LifelineDesign.Builder b =
                LifelineDesign.builder("Gallery").line(threeSpans().build());
        for (Worker each : workers) {
            b.worker(each);
        }
        return b;
    }
}
