package org.fallow.platform;

import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/** True unless {@code spring.datasource.url} names a database. */
class NoDatabaseConfigured implements Condition {

	@Override
	public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
		return !StringUtils.hasText(context.getEnvironment().getProperty("spring.datasource.url"));
	}

}
