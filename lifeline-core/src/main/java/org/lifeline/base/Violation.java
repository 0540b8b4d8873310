package org.lifeline.base;

/**
 * One thing that is wrong with an input: where, what was given, and the rule that it breaks.
 *
 * <p>Immutable and thread-safe.
 *
 * @param path the place, in the words of the input, for example {@code workers[1].mass}
 * @param value the value as given, with its unit
 * @param rule the rule that it breaks, as a sentence
 */
public record Violation(String path, String value, String rule) {

    /**
     * The violation moved below a parent, so that a part can be checked alone and reported in its place.
     *
     * @param parent the parent's path, for example {@code workers[1]}
     * @return the same violation with the longer path
     */
    public Violation below(String parent) {
        if (parent.isEmpty()) {
            return this;
        }
        if (path.isEmpty()) {
            return new Violation(parent, value, rule);
        }
        String joint = path.startsWith("[") ? "" : ".";
        return new Violation(parent + joint + path, value, rule);
    }

    @Override
    public String toString() {
        return path + ": " + value + ": " + rule;
    }
}
