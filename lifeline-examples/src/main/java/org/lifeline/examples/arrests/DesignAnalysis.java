package org.lifeline.examples.arrests;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;

/**
 * Computes a whole design, by energy balance or in time.
 *
 * <p>Immutable and thread-safe.
 */
public final class DesignAnalysis {
    private final ArrestListener listener;
    private final Method method;

    private DesignAnalysis(ArrestListener listener, Method method) {
        this.listener = listener;
        this.method = method;
    }

    /** Told before each arrest is computed. */
    @FunctionalInterface
    public interface ArrestListener {
        /**
         * An arrest is about to be computed.
         *
         * @param what the fall, in words
         * @param done number of arrests that are done
         * @param all number of arrests in all
         */
        void next(String what, int done, int all);
    }

    /**
     * The analysis by energy balance, telling nobody how far it is.
     *
     * @return the analysis
     */
    public static DesignAnalysis withDefaults() {
        return new DesignAnalysis((what, done, all) -> {}, Method.ENERGY_BALANCE);
    }

    /**
     * The same by another method. Worst places are looked for by energy balance in any case.
     *
     * @param value how arrests are computed
     * @return the new analysis
     */
    public DesignAnalysis withMethod(Method value) {
        return new DesignAnalysis(listener, value);
    }

    /**
     * The same with a listener.
     *
     * @param value told before each arrest
     * @return the new analysis
     */
    public DesignAnalysis withListener(ArrestListener value) {
        return new DesignAnalysis(value, method);
    }

    /**
     * Computes every fall at every service temperature with both deployment forces; where the design names no falls, the
     * worst places are looked for first.
     *
     * @param design the design
     * @return everything that was computed
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated, with paths of the design file
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     */
    public DesignRun solve(LifelineDesign design) {
        LineEquilibrium installed = Statics.withDefaults().solve(design.line(), List.of());
        boolean search = design.falls().isEmpty();
        LifelineDesign computed = search ? new WorstPlaces(listener).addTo(design) : design;
        int all = computed.falls().size() * computed.temperatures().size() * 2;
        List<ArrestResult> arrests = new ArrayList<>();
        for (Fall fall : computed.falls()) {
            for (double temperature : computed.temperatures()) {
                for (DeploymentForce side : List.of(DeploymentForce.CLEARANCE, DeploymentForce.MAXIMUM)) {
                    listener.next("fall \"" + fall.id() + '"', arrests.size(), all);
                    arrests.add(
                            method == Method.TRANSIENT
                                    ? motion(computed, temperature, side)
                                            .solve(computed.line(), fall)
                                            .arrest()
                                    : arrest(computed, temperature, side).solve(computed.line(), fall));
                }
            }
        }
        return new DesignRun(computed, search, installed, arrests);
    }

    private static TransientArrest motion(LifelineDesign design, double temperature, DeploymentForce side) {
        return TransientArrest.withDefaults()
                .withTemperature(temperature)
                .withSide(side)
                .withClearance(design.clearance());
    }

    static EnergyBalance arrest(LifelineDesign design, double temperature, DeploymentForce side) {
        return EnergyBalance.withDefaults()
                .withTemperature(temperature)
                .withSide(side)
                .withClearance(design.clearance());
    }
}
