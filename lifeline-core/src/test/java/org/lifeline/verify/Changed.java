package org.lifeline.verify;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Numbers of a result with one of them changed. */
final class Changed {
    private Changed() {}

    /** A record with another value for one component. */
    static <R extends Record> R with(R old, String component, Object value) {
        try {
            RecordComponent[] components = old.getClass().getRecordComponents();
            Object[] values = new Object[components.length];
            Class<?>[] types = new Class<?>[components.length];
            boolean found = false;
            for (int i = 0; i < components.length; i++) {
                types[i] = components[i].getType();
                components[i].getAccessor().setAccessible(true);
                boolean here = components[i].getName().equals(component);
                values[i] = here ? value : components[i].getAccessor().invoke(old);
                found |= here;
            }
            if (!found) {
                throw new AssertionError(component + " is not one of " + Arrays.toString(components));
            }
            @SuppressWarnings("unchecked")
            Constructor<R> constructor = (Constructor<R>) old.getClass().getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }

    /** A list with another element at one place. */
    static <T> List<T> at(List<T> old, int index, UnaryOperator<T> change) {
        List<T> list = new ArrayList<>(old);
        list.set(index, change.apply(old.get(index)));
        return list;
    }

    static StateNumbers piece(StateNumbers s, int span, int piece, UnaryOperator<PieceNumbers> change) {
        return with(
                s, "spans", at(s.spans(), span - 1, old -> with(old, "pieces", at(old.pieces(), piece - 1, change))));
    }

    static StateNumbers support(StateNumbers s, int support, UnaryOperator<SupportReaction> change) {
        return with(s, "supports", at(s.supports(), support, change));
    }

    static StateNumbers load(StateNumbers s, int load, UnaryOperator<LoadPosition> change) {
        return with(s, "loads", at(s.loads(), load - 1, change));
    }

    static StateNumbers absorber(StateNumbers s, int absorber, UnaryOperator<InlineAbsorberState> change) {
        return with(s, "absorbers", at(s.absorbers(), absorber, change));
    }

    /** The same numbers, said to be those of a line with another support. */
    static StateNumbers line(StateNumbers s, int support, UnaryOperator<Support> change) {
        Lifeline old = s.line();
        Lifeline.Builder builder =
                Lifeline.builder().cable(old.cable()).installed(old.installed()).gravity(old.gravity());
        at(old.supports(), support, change).forEach(builder::support);
        return with(s, "line", builder.build());
    }

    static Point moved(Point p, double x, double y, double z) {
        return p.plus(new Vector3(x, y, z));
    }

    static Vector3 pulled(Vector3 t, double force) {
        return t.plus(t.times(force / t.magnitude()));
    }
}
