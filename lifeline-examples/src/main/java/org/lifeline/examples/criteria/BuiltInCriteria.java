package org.lifeline.examples.criteria;
import java.util.Set;
public final class BuiltInCriteria { public static Set<String> ids() { return Set.of("us-osha-hll-factor"); } }
