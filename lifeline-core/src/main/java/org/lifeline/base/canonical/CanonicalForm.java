package org.lifeline.base.canonical;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a value consists of: paths in the words of its builder, each with a number and its unit, or with a text.
 *
 * <p>A part of a list is named by its id where it has one, {@code support[north].position.x}, so that differences stay with
 * it when another part is put before it; its place in the order is kept by the order of the entries. Immutable and
 * thread-safe. Build with {@link #builder}.
 *
 * @since 1.0.0
 */
public final class CanonicalForm {
    private final String kind;
    private final List<Entry> entries;

    private CanonicalForm(String kind, List<Entry> entries) {
        this.kind = kind;
        this.entries = List.copyOf(entries);
    }

    /**
     * One entry.
     *
     * @param path where in the value
     * @param text the text; the number as text for an entry that is a number
     * @param value the number [unit of the entry]; may be infinite; empty for a text
     * @param unit unit of the number; empty for a bare number or a text
     * @since 1.0.0
     */
    public record Entry(String path, String text, OptionalDouble value, String unit) {
        /**
         * Tells a number from a text.
         *
         * @return true for a number
         */
        public boolean isNumber() {
            return value.isPresent();
        }

        /**
         * The number.
         *
         * @return the number [unit of the entry]; NaN for a text
         */
        public double number() {
            return value.orElse(Double.NaN);
        }

        /**
         * The entry without its path.
         *
         * @return number with unit, or text
         */
        public String shown() {
            return unit.isEmpty() ? text : text + " " + unit;
        }
    }

    /**
     * Starts a form.
     *
     * @param kind what kind of value it is, for example {@code "lifeline"}
     * @return a builder
     */
    public static Builder builder(String kind) {
        return new Builder(kind);
    }

    /**
     * What kind of value this is the form of.
     *
     * @return the kind
     */
    public String kind() {
        return kind;
    }

    /**
     * What the value consists of.
     *
     * @return the entries, in a fixed order; unmodifiable
     */
    public List<Entry> entries() {
        return entries;
    }

    /**
     * The fingerprint of the form.
     *
     * @return version and hash
     */
    public Fingerprint fingerprint() {
        return Fingerprint.of(this);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof CanonicalForm f && kind.equals(f.kind) && entries.equals(f.entries);
    }

    @Override
    public int hashCode() {
        return 31 * kind.hashCode() + entries.hashCode();
    }

    /**
     * The form as lines.
     *
     * @return one line an entry, path and value
     */
    @Override
    public String toString() {
        StringBuilder b = new StringBuilder(kind);
        entries.forEach(e -> b.append('\n').append(e.path).append(": ").append(e.shown()));
        return b.toString();
    }

    /**
     * Collects the entries of a form. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final String kind;
        private final List<Entry> entries = new ArrayList<>();
        private final Set<String> seen = new HashSet<>();

        private Builder(String kind) {
            this.kind = kind;
        }

        /**
         * Adds a number.
         *
         * @param path where
         * @param value the number [unit of the entry]; may be infinite or NaN
         * @param unit its unit; empty for a bare number
         * @return this
         */
        public Builder number(String path, double value, String unit) {
            return add(new Entry(path, Double.toString(value), OptionalDouble.of(value), unit));
        }

        /**
         * Adds a number that may be missing.
         *
         * @param path where
         * @param value the number [unit of the entry]; adds nothing where empty
         * @param unit its unit; empty for a bare number
         * @return this
         */
        public Builder number(String path, OptionalDouble value, String unit) {
            value.ifPresent(v -> number(path, v, unit));
            return this;
        }

        /**
         * Adds a text, also a name of a kind or a truth value.
         *
         * @param path where
         * @param value the text
         * @return this
         */
        public Builder text(String path, Object value) {
            return add(new Entry(path, String.valueOf(value), OptionalDouble.empty(), ""));
        }

        /**
         * Adds everything of a part.
         *
         * @param path where the part is
         * @param part the part
         * @return this
         */
        public Builder part(String path, Canonical part) {
            for (Entry each : part.canonicalForm().entries()) {
                add(new Entry(path + "." + each.path, each.text, each.value, each.unit));
            }
            return this;
        }

        /**
         * The path of a part of a list.
         *
         * @param list name of the list
         * @param id id of the part, or its number
         * @return {@code list[id]}, with brackets and backslashes of the id escaped
         */
        public static String element(String list, Object id) {
            String escaped =
                    String.valueOf(id).replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]");
            return list + "[" + escaped + "]";
        }

        private Builder add(Entry entry) {
            if (!seen.add(entry.path)) {
                throw new IllegalStateException(entry.path + " has been added before");
            }
            entries.add(entry);
            return this;
        }

        /**
         * Makes the form.
         *
         * @return the form
         */
        public CanonicalForm build() {
            return new CanonicalForm(kind, entries);
        }
    }
}
