package org.lifeline.explorer.engine;

import org.teavm.backend.javascript.TeaVMJavaScriptHost;
import org.teavm.backend.javascript.rendering.Precedence;
import org.teavm.model.BasicBlock;
import org.teavm.model.ClassHolder;
import org.teavm.model.Instruction;
import org.teavm.model.MethodHolder;
import org.teavm.model.MethodReference;
import org.teavm.model.Program;
import org.teavm.model.Variable;
import org.teavm.model.instructions.BinaryInstruction;
import org.teavm.model.instructions.BinaryOperation;
import org.teavm.model.instructions.InvocationType;
import org.teavm.model.instructions.InvokeInstruction;
import org.teavm.model.instructions.NumericOperandType;
import org.teavm.vm.spi.TeaVMHost;
import org.teavm.vm.spi.TeaVMPlugin;

/**
 * Keeps sums and products of doubles in the order in which they are written. The compiler for browsers takes a + (b + c) for
 * (a + b) + c, and a · (b / c) for (a · b) / c, which are rounded in another order; the load path of a line with friction is
 * followed in steps that turn on last digits. The second operand is put in brackets, at no cost when the script runs.
 */
public final class Brackets implements TeaVMPlugin {
    private static final MethodReference WHOLE =
            new MethodReference(Brackets.class, "whole", double.class, double.class);

    /** The extension, made by the compiler. */
    public Brackets() {}

    /**
     * The value itself, written in brackets.
     *
     * @param value any value
     * @return the same
     */
    static native double whole(double value);

    @Override
    public void install(TeaVMHost host) {
        TeaVMJavaScriptHost script = host.getExtension(TeaVMJavaScriptHost.class);
        if (script == null) {
            return;
        }
        script.add(WHOLE, (context, method) -> {
            context.getWriter().append('(');
            context.writeExpr(context.getArgument(0), Precedence.min());
            context.getWriter().append(')');
        });
        host.add((type, context) -> keepOrder(type));
    }

    private static void keepOrder(ClassHolder type) {
        for (MethodHolder method : type.getMethods()) {
            Program program = method.getProgram();
            if (program != null) {
                keepOrder(program);
            }
        }
    }

    private static void keepOrder(Program program) {
        for (BasicBlock block : program.getBasicBlocks()) {
            for (Instruction each : block) {
                if (each instanceof BinaryInstruction sum && isRegrouped(sum)) {
                    Variable whole = program.createVariable();
                    InvokeInstruction invoke = new InvokeInstruction();
                    invoke.setType(InvocationType.SPECIAL);
                    invoke.setMethod(WHOLE);
                    invoke.setArguments(sum.getSecondOperand());
                    invoke.setReceiver(whole);
                    invoke.setLocation(sum.getLocation());
                    sum.insertPrevious(invoke);
                    sum.setSecondOperand(whole);
                }
            }
        }
    }

    private static boolean isRegrouped(BinaryInstruction sum) {
        return sum.getOperandType() == NumericOperandType.DOUBLE
                && (sum.getOperation() == BinaryOperation.ADD || sum.getOperation() == BinaryOperation.MULTIPLY);
    }
}
