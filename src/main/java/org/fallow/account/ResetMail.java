package org.fallow.account;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

import org.fallow.access.PersonId;
import org.fallow.platform.Language;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.mail.MailException;
import org.springframework.mail.SimpleMailMessage;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;

/**
 * Mails a link that sets a new password, and what was done about an account, where a mail
 * server is configured ({@code spring.mail.host}). Whoever asks for a link learns
 * nothing, not even by how long it takes: the account is looked for after the answer was
 * given.
 */
@Component
public class ResetMail implements DisposableBean {

	/** How long a link works that is mailed. */
	public static final Duration LINK_BY_MAIL = Duration.ofHours(1);

	/** Nobody gets mails faster than this, however often somebody asks. */
	static final Duration BETWEEN_MAILS = Duration.ofMinutes(5);

	private static final Logger log = LoggerFactory.getLogger(ResetMail.class);

	private static final int MOST_WAITING = 1000;

	private final ThreadPoolExecutor postman = new ThreadPoolExecutor(1, 1, 1, TimeUnit.MINUTES,
			new LinkedBlockingQueue<>(MOST_WAITING), (work) -> new Thread(work, "reset-mail"));

	private final ObjectProvider<JavaMailSender> sender;

	private final Accounts accounts;

	private final PasswordLinks links;

	private final SignInWork work;

	private final PublicUrl address;

	private final MessageSource messages;

	private final String from;

	ResetMail(ObjectProvider<JavaMailSender> sender, Accounts accounts, PasswordLinks links, SignInWork work,
			PublicUrl address, MessageSource messages, @Value("${fallow.mail.from}") String from) {
		this.sender = sender;
		this.accounts = accounts;
		this.links = links;
		this.work = work;
		this.address = address;
		this.messages = messages;
		this.from = from;
	}

	/**
	 * Whether mail can be sent at all.
	 * @return true with a mail server
	 */
	public boolean isPossible() {
		return this.sender.getIfAvailable() != null;
	}

	/**
	 * Sends a link to the account of this name, if there is one, its name is an address,
	 * and no link was sent within the last five minutes. It returns at once.
	 * @param username as typed
	 */
	public void send(String username) {
		String folded = SignInName.folded(username);
		post(() -> prepared(folded));
	}

	private void post(Supplier<Optional<SimpleMailMessage>> prepared) {
		try {
			this.postman.execute(() -> deliver(prepared));
		}
		catch (RejectedExecutionException ex) {
			log.warn("A mail about an account was not sent: too many wait to be sent.");
		}
	}

	/**
	 * Tells a person what was done about their account, where mail is possible and the
	 * sign-in name is an address. It returns at once.
	 * @param person whose account
	 * @param code of the sentences, which end in {@code .subject} and {@code .text}
	 * @param arguments of the text
	 */
	void tell(PersonId person, String code, String... arguments) {
		post(() -> this.accounts.find(person)
			.filter((account) -> SignInName.isAddress(account.username()))
			.map((account) -> message(account.username(), code, language(account), arguments)));
	}

	private void deliver(Supplier<Optional<SimpleMailMessage>> prepared) {
		try {
			JavaMailSender mail = this.sender.getIfAvailable();
			if (mail != null) {
				this.work.call(prepared).ifPresent(mail::send);
			}
		}
		catch (MailException ex) {
			log.warn("A mail about an account could not be sent; is the mail server right? {}",
					ex.getClass().getName());
		}
		catch (RuntimeException ex) {
			log.error("A mail about an account could not be prepared.", ex);
		}
	}

	private Optional<SimpleMailMessage> prepared(String folded) {
		return Optional.of(folded)
			.filter(SignInName::isAddress)
			.flatMap(this.accounts::find)
			.filter((account) -> !this.links.hasOneSince(new PersonId(account.personId()), BETWEEN_MAILS))
			.map((account) -> message(folded, "reset.mail", language(account), link(account)));
	}

	private String link(Account account) {
		return this.address.link("/reset/" + this.links.issue(new PersonId(account.personId()), LINK_BY_MAIL, null));
	}

	/** Whoever asked for the mail need not be whom it goes to: no browser is asked. */
	private static Locale language(Account account) {
		return Language.tagged(account.language()).orElse(Language.ENGLISH).locale();
	}

	private SimpleMailMessage message(String to, String code, Locale language, String... arguments) {
		SimpleMailMessage message = new SimpleMailMessage();
		message.setFrom(this.from);
		message.setTo(to);
		message.setSubject(this.messages.getMessage(code + ".subject", null, language));
		message.setText(this.messages.getMessage(code + ".text", arguments, language));
		return message;
	}

	@Override
	public void destroy() {
		this.postman.shutdown();
	}

}
