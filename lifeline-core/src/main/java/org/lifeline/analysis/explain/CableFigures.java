package org.lifeline.analysis.explain;

import static org.lifeline.analysis.explain.Expression.minus;
import static org.lifeline.analysis.explain.Expression.number;
import static org.lifeline.analysis.explain.Expression.over;
import static org.lifeline.analysis.explain.Expression.square;
import static org.lifeline.analysis.explain.Expression.sum;
import static org.lifeline.analysis.explain.Expression.times;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.LoadElongation;

/**
 * The figures of a cable at a temperature, as they are used in formulas.
 *
 * @param law how it stretches
 * @param weight weight per unstretched length at the temperature; empty where it has none
 * @param stiffness EA of each straight piece of its load–elongation curve
 * @param offset strain at no tension of each straight piece; empty where it is 0
 * @param corner tension at which each piece begins
 * @param constant part of the complementary energy that a piece takes over from those below it; empty where it is 0
 */
record CableFigures(
        LoadElongation law,
        Optional<Figure> weight,
        List<Figure> stiffness,
        List<Optional<Figure>> offset,
        List<Figure> corner,
        List<Optional<Figure>> constant) {

    /** Writes the cable down at the temperature of installation and, if it is another, at that of service. */
    static CableFigures write(CalculationSheet sheet, Lifeline line, double temperature) {
        sheet.section("Cable");
        CableFigures cold = cable(sheet, line);
        return cold.at(sheet, line, temperature);
    }

    static CableFigures cable(CalculationSheet sheet, Lifeline line) {
        Optional<Figure> weight = line.weightPerLength() == 0
                ? Optional.empty()
                : Optional.of(sheet.given(
                        "w",
                        "weight of the cable per unstretched length",
                        line.weightPerLength(),
                        Dimension.FORCE_PER_LENGTH,
                        "design"));
        LoadElongation law = line.cable().elongation();
        List<Figure> stiffness = new ArrayList<>();
        List<Optional<Figure>> offset = new ArrayList<>();
        List<Figure> corner = new ArrayList<>();
        List<Optional<Figure>> constant = new ArrayList<>();
        if (law.isLinear()) {
            stiffness.add(sheet.given("EA", "axial stiffness", 1 / law.compliance(0), Dimension.FORCE, "design"));
            offset.add(Optional.empty());
            constant.add(Optional.empty());
            return new CableFigures(law, weight, stiffness, offset, corner, constant);
        }
        Figure e = sheet.given("ε_0", "strain at corner 0 of the load–elongation curve", 0, Dimension.RATIO, "design");
        Figure t = sheet.given("T_c0", "tension at corner 0", 0, Dimension.FORCE, "design");
        Optional<Figure> energy = Optional.empty();
        corner.add(t);
        for (int j = 0; j < law.pieces(); j++) {
            LoadElongation.Corner c = law.corners().get(j + 1);
            String k = Integer.toString(j + 1);
            Figure e2 = sheet.given("ε_" + k, "strain at corner " + k, c.strain(), Dimension.RATIO, "design");
            Figure t2 = sheet.given("T_c" + k, "tension at corner " + k, c.tension(), Dimension.FORCE, "design");
            Figure ea = sheet.row(
                    "EA_" + k, "stiffness of piece " + k, over(minus(t2, t), minus(e2, e)), Dimension.FORCE, "curve");
            stiffness.add(ea);
            corner.add(t2);
            Expression strain = e;
            Expression start = t;
            offset.add(energy.map(up -> sheet.row(
                    "a_" + k,
                    "strain of piece " + k + " at no tension",
                    minus(strain, over(start, ea)),
                    Dimension.RATIO,
                    "curve")));
            Optional<Figure> a = offset.get(j);
            constant.add(energy.map(up -> sheet.row(
                    "c_" + k,
                    "complementary energy per length that piece " + k + " takes over",
                    minus(up, line(start, ea, a)),
                    Dimension.FORCE,
                    "curve")));
            if (j + 1 < law.pieces()) {
                Expression own = line(t2, ea, a);
                Optional<Figure> taken = constant.get(j);
                energy = Optional.of(sheet.row(
                        "B_" + k,
                        "complementary energy per length up to corner " + k,
                        taken.isPresent() ? sum(taken.get(), own) : own,
                        Dimension.FORCE,
                        "∫ε dT along the curve"));
            }
            e = e2;
            t = t2;
        }
        return new CableFigures(law, weight, stiffness, offset, corner, constant);
    }

    /** a T + T²/(2 EA). */
    private static Expression line(Expression tension, Figure stiffness, Optional<Figure> offset) {
        Expression bent = over(square(tension), times(number(2), stiffness));
        return offset.isPresent() ? sum(times(offset.get(), tension), bent) : bent;
    }

    /** The same cable at another temperature. */
    CableFigures at(CalculationSheet sheet, Lifeline line, double temperature) {
        double installed = line.installed().temperature();
        if (temperature == installed) {
            return this;
        }
        Figure alpha = sheet.given(
                "α",
                "coefficient of linear thermal expansion",
                line.cable().thermalExpansion(),
                Dimension.EXPANSION,
                "design");
        Figure ti = sheet.given("t_i", "temperature of installation", installed, Dimension.TEMPERATURE, "design");
        Figure ts = sheet.given("t", "temperature", temperature, Dimension.TEMPERATURE, "design");
        Figure factor = sheet.row(
                "λ",
                "factor on unstretched lengths",
                sum(number(1), times(alpha, minus(ts, ti))),
                Dimension.RATIO,
                "physics of thermal expansion");
        Optional<Figure> hot = weight.map(w -> sheet.row(
                "w_t",
                "weight per unstretched length at that temperature; mass is conserved",
                over(w, factor),
                Dimension.FORCE_PER_LENGTH,
                "conservation of mass"));
        return new CableFigures(law, hot, stiffness, offset, corner, constant);
    }
}
