package org.fallow.platform;

import java.util.ArrayList;
import java.util.List;

import javax.sql.DataSource;

import net.ttddyy.dsproxy.ExecutionInfo;
import net.ttddyy.dsproxy.QueryInfo;
import net.ttddyy.dsproxy.listener.QueryExecutionListener;
import net.ttddyy.dsproxy.support.ProxyDataSourceBuilder;

import org.springframework.beans.factory.config.BeanPostProcessor;

/**
 * Listens to the statements that a test's thread sends to the database, for
 * {@code @Import}.
 */
public class Statements implements BeanPostProcessor, QueryExecutionListener {

	private static final ThreadLocal<List<String>> HEARD = new ThreadLocal<>();

	@Override
	public Object postProcessAfterInitialization(Object bean, String name) {
		return (bean instanceof DataSource source) ? ProxyDataSourceBuilder.create(source).listener(this).build()
				: bean;
	}

	@Override
	public void beforeQuery(ExecutionInfo execution, List<QueryInfo> queries) {
		// they are noted once they were executed
	}

	@Override
	public void afterQuery(ExecutionInfo execution, List<QueryInfo> queries) {
		List<String> heard = HEARD.get();
		if (heard != null) {
			queries.forEach((query) -> heard.add(query.getQuery().replaceAll("\\s+", " ").strip()));
		}
	}

	/**
	 * What a piece of work sends, without who is asking ({@code set_config}) and the
	 * access trace, which are the price of privacy and counted by themselves.
	 * @param work what to listen to, in this thread
	 * @return the statements in their order
	 */
	public static List<String> of(Runnable work) {
		List<String> heard = new ArrayList<>();
		HEARD.set(heard);
		try {
			work.run();
		}
		finally {
			HEARD.remove();
		}
		return heard.stream()
			.filter((sql) -> !sql.startsWith("select set_config(") && !sql.startsWith("insert into access_trace"))
			.toList();
	}

}
