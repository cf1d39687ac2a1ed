package org.fallow.platform;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;

import javax.sql.DataSource;

import net.ttddyy.dsproxy.ExecutionInfo;
import net.ttddyy.dsproxy.QueryInfo;
import net.ttddyy.dsproxy.proxy.ParameterSetOperation;
import net.ttddyy.dsproxy.listener.QueryExecutionListener;
import net.ttddyy.dsproxy.support.ProxyDataSourceBuilder;

import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Listens to the statements that a test's thread sends to the database, for
 * {@code @Import}.
 */
public class Statements implements BeanPostProcessor, QueryExecutionListener {

	private static final ThreadLocal<List<QueryInfo>> HEARD = new ThreadLocal<>();

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
		List<QueryInfo> heard = HEARD.get();
		if (heard != null) {
			heard.addAll(queries);
		}
	}

	/**
	 * What a piece of work sends, without who is asking ({@code set_config}) and the
	 * access trace, which are the price of privacy and counted by themselves.
	 * @param work what to listen to, in this thread
	 * @return the statements in their order
	 */
	public static List<String> of(Runnable work) {
		return heard(work).stream().map(Statements::text).toList();
	}

	private static List<QueryInfo> heard(Runnable work) {
		List<QueryInfo> heard = new ArrayList<>();
		HEARD.set(heard);
		try {
			work.run();
		}
		finally {
			HEARD.remove();
		}
		return heard.stream()
			.filter((query) -> !text(query).startsWith("select set_config(")
					&& !text(query).startsWith("insert into access_trace"))
			.toList();
	}

	private static String text(QueryInfo query) {
		return query.getQuery().replaceAll("\\s+", " ").strip();
	}

	/**
	 * The plans of the reading statements that a piece of work sends, with the values it
	 * sends them with.
	 * @param work what to listen to, in this thread
	 * @param transaction in which the plans are made, and so as whom
	 * @param jdbc where
	 * @return each plan's lines
	 */
	public static List<String> plansOf(Runnable work, TransactionTemplate transaction, JdbcTemplate jdbc) {
		List<QueryInfo> reading = heard(work).stream()
			.filter((query) -> text(query).startsWith("select") && !text(query).endsWith("for update"))
			.toList();
		return transaction.execute((status) -> reading.stream()
			.map((query) -> jdbc.execute((Connection connection) -> plan(connection, query)))
			.toList());
	}

	private static String plan(Connection connection, QueryInfo query) throws SQLException {
		try (PreparedStatement explain = connection.prepareStatement("explain (costs off) " + query.getQuery())) {
			for (ParameterSetOperation value : query.getParametersList().get(0)) {
				value.getMethod().invoke(explain, value.getArgs());
			}
			StringJoiner lines = new StringJoiner("\n");
			try (ResultSet plan = explain.executeQuery()) {
				while (plan.next()) {
					lines.add(plan.getString(1));
				}
			}
			return lines.toString();
		}
		catch (ReflectiveOperationException ex) {
			throw new IllegalStateException(ex);
		}
	}

}
