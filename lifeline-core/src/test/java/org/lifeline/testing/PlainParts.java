package org.lifeline.testing;

import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.Cable;

/** Parts of lines that many tests need and that nothing about them is special. */
public final class PlainParts {
    private PlainParts() {}

    /** A cable of a mass [kg/m] and an axial stiffness [N]. */
    public static Cable cable(double massPerLength, double axialStiffness) {
        return Cable.builder()
                .massPerLength(massPerLength)
                .axialStiffness(axialStiffness)
                .build();
    }

    /** A level span between rigid anchors "a" and "b", of a length [m] at an elevation [m], pretensioned to a force [N]. */
    public static Lifeline span(Cable cable, double length, double elevation, double pretension) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("a", Point.of(0, 0, elevation))
                .endAnchor("b", Point.of(length, 0, elevation))
                .pretension(pretension)
                .build();
    }

    /** A lanyard of 1.8 m with an absorber: force on average and at most [N], extension [m]; rigid up to its force. */
    public static Connection lanyard(double onAverage, double atMost, double extension) {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(onAverage)
                        .maximumForce(atMost)
                        .maximumExtension(extension)
                        .build());
    }

    /** A lanyard of 1.8 m whose absorber draws out by 1.75 m at 6 kN, elastic before [100 kN/m]. */
    public static Connection sixKilonewtons() {
        return Connection.lanyard(
                1.8,
                PersonalAbsorber.builder()
                        .clearanceForce(6000)
                        .maximumForce(6000)
                        .maximumExtension(1.75)
                        .initialStiffness(1e5)
                        .build());
    }
}
