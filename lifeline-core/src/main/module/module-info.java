/**
 * Cables between anchors, the falls they arrest and the forces that result.
 *
 * <p>Every public package is exported; {@code org.lifeline.internal} is not. Commons Math and EJML have no descriptors: their
 * names are those that the module path gives their jars. {@code .ci/modules} gives copies of them descriptors of the same
 * names, for {@code jlink}.
 */
module org.lifeline.core {
    requires commons.math3;
    requires ejml.core;
    requires ejml.ddense;
    requires static org.jspecify;

    exports org.lifeline.analysis;
    exports org.lifeline.analysis.clearance;
    exports org.lifeline.analysis.explain;
    exports org.lifeline.analysis.motion;
    exports org.lifeline.analysis.state;
    exports org.lifeline.analysis.warning;
    exports org.lifeline.base;
    exports org.lifeline.base.canonical;
    exports org.lifeline.base.unit;
    exports org.lifeline.design.assessment;
    exports org.lifeline.design.clearance;
    exports org.lifeline.design.criteria;
    exports org.lifeline.design.envelope;
    exports org.lifeline.design.field;
    exports org.lifeline.design.handover;
    exports org.lifeline.design.installation;
    exports org.lifeline.design.occupancy;
    exports org.lifeline.design.structure;
    exports org.lifeline.design.study;
    exports org.lifeline.design.study.partial;
    exports org.lifeline.design.variable;
    exports org.lifeline.model;
    exports org.lifeline.model.absorber;
    exports org.lifeline.model.cable;
    exports org.lifeline.model.incident;
    exports org.lifeline.report;
    exports org.lifeline.report.appendix;
    exports org.lifeline.report.chart;
    exports org.lifeline.report.document;
    exports org.lifeline.report.handover;
    exports org.lifeline.report.picture;
    exports org.lifeline.report.section;
    exports org.lifeline.verify;
    exports org.lifeline.verify.state;
}
