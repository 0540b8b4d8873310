package org.lifeline.testing;

import java.util.List;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.AbsorberBuilder;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** Random falls on a line: one to three together, up to four who hang, every kind of connection, forces to 100 kN. */
final class RandomFalls {
    private final Chance chance;
    private final Lifeline line;
    private int workers;
    private double shortest;

    RandomFalls(Chance chance, Lifeline line) {
        this.chance = chance;
        this.line = line;
    }

    Fall draw() {
        Place place = place(chance.whole(1, line.spans()));
        Fall.Builder fall = Fall.builder("fall").at(place);
        Attachment attachment = chance.of(Attachment.values());
        boolean heavy = chance.is(0.15);
        double freeFall = chance.is(0.2) ? (chance.is(0.2) ? 0 : chance.uniform(0, 4)) : Double.NaN;
        if (!Double.isNaN(freeFall)) {
            fall.freeFall(freeFall);
        }
        int together = chance.is(0.75) ? 1 : chance.whole(2, 3);
        shortest = Double.isNaN(freeFall) ? 0 : freeFall / 2;
        Connection shared = connection(heavy);
        for (int i = 0; i < together; i++) {
            fall.faller(worker(heavy, attachment, place, chance.is(0.5) ? shared : connection(heavy)));
        }
        for (int i = chance.is(0.55) ? 0 : chance.whole(1, 4); i > 0; i--) {
            Place at = place(chance.is(0.4) ? place.span() : chance.whole(1, line.spans()));
            fall.hanging(worker(heavy, chance.of(Attachment.values()), at, shared), at);
        }
        return fall.build();
    }

    private Place place(int span) {
        return Place.of(span, line.run(span) * chance.uniform(0.03, 0.97));
    }

    private Worker worker(boolean heavy, Attachment attachment, Place place, Connection connection) {
        double share = place.station() / line.run(place.span());
        double chord = line.supports().get(place.span() - 1).position().z() + share * line.rise(place.span());
        return Worker.builder("worker " + ++workers)
                .mass(heavy ? chance.log(150, 1e4) : chance.uniform(50, 150))
                .walkingLevel(chord - chance.uniform(-0.5, 3))
                .attachment(attachment)
                .connection(connection)
                .build();
    }

    private Connection connection(boolean heavy) {
        double length = Math.max(shortest, chance.uniform(0, 2.5));
        return switch (chance.whole(0, 4)) {
            case 0 -> Connection.plainLanyard(length, LoadingCurve.spring(chance.log(1e4, 1e6)));
            case 1 -> Connection.givenCurve(length, curve(heavy));
            case 2 -> Connection.selfRetracting(chance.uniform(0, 1.2), absorber(heavy));
            default -> Connection.lanyard(length, absorber(heavy));
        };
    }

    private double force(boolean heavy) {
        return heavy ? chance.log(5e3, 1e5) : chance.log(1.5e3, 2e4);
    }

    private PersonalAbsorber absorber(boolean heavy) {
        double force = force(heavy);
        double extension = chance.uniform(0.2, 2);
        AbsorberBuilder builder = PersonalAbsorber.builder()
                .maximumForce(force)
                .clearanceForce(force * (chance.is(0.2) ? 1 : chance.uniform(0.4, 1)))
                .maximumExtension(extension);
        if (chance.is(0.6)) {
            builder.initialStiffness(force / extension * chance.log(1.5, 100));
        }
        if (chance.is(0.7)) {
            builder.stopStiffness(chance.log(2e4, 1e6));
        }
        return builder.build();
    }

    private LoadingCurve curve(boolean heavy) {
        double force = force(heavy);
        double reach = chance.uniform(0.01, 0.3);
        List<Corner> corners = List.of(
                new Corner(0, 0),
                new Corner(reach, force),
                new Corner(reach + chance.uniform(0.1, 1), force),
                new Corner(reach + chance.uniform(1.1, 2), force * chance.uniform(1, 1.5)));
        return LoadingCurve.through(corners, Double.POSITIVE_INFINITY, chance.log(2e4, 1e6));
    }
}
