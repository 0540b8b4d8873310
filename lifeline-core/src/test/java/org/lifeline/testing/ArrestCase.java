package org.lifeline.testing;

import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * A fall on a line, at a temperature, on one side of the force range.
 *
 * @param name where it comes from: the seed of a random case
 * @param line the line
 * @param fall the fall
 * @param temperature temperature in service [°C]
 * @param side side of the absorber's force range
 */
public record ArrestCase(String name, Lifeline line, Fall fall, double temperature, DeploymentForce side) {

    /** Solves the case. */
    public ArrestResult solve() {
        return EnergyBalance.withDefaults()
                .withTemperature(temperature)
                .withSide(side)
                .solve(line, fall);
    }

    /** The case as text, which {@link CaseText#read} turns into the case again. */
    public String text() {
        return CaseText.write(this);
    }
}
