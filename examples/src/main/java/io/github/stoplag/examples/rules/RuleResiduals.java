package io.github.stoplag.examples.rules;

import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.braking.Residual;
import java.util.Comparator;
import java.util.List;

/**
 * A published rule with the residuals of its printed figures, computed once; listed by key, so that one publisher's
 * rules stand together.
 */
record RuleResiduals(PublishedRule rule, List<Residual> residuals) {
    static List<RuleResiduals> of(List<PublishedRule> rules) {
        return rules.stream()
                .sorted(Comparator.comparing(PublishedRule::key))
                .map(rule -> new RuleResiduals(rule, rule.residuals()))
                .toList();
    }

    boolean explained() {
        return residuals.stream().allMatch(Residual::explained);
    }
}
