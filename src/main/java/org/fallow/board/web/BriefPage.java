package org.fallow.board.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.board.LastEntries;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Charge;
import org.fallow.team.Group;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.fallow.training.Plan;
import org.fallow.training.Plans;
import org.fallow.training.Programmes;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The squad brief: the week on one page, to print or, without names, to send. */
@Controller
class BriefPage {

	private final AthleteAccess access;

	private final Squad squad;

	private final Programmes programmes;

	private final Plans plans;

	private final LastEntries lastEntries;

	private final BriefText text;

	private final Today today;

	BriefPage(AthleteAccess access, Squad squad, Programmes programmes, Plans plans, LastEntries lastEntries,
			BriefText text, Today today) {
		this.access = access;
		this.squad = squad;
		this.programmes = programmes;
		this.plans = plans;
		this.lastEntries = lastEntries;
		this.text = text;
		this.today = today;
	}

	@GetMapping("/brief")
	String brief(Model model, Locale locale) {
		PersonId coach = this.access.person();
		List<Team> teams = this.squad.teamsOf(coach);
		LocalDate today = this.today.ofFirst(teams);
		List<Athlete> athletes = this.squad.athletesOf(coach);
		this.access.looked(athletes, TraceSubject.BOARD);
		List<PersonId> ids = athletes.stream().map(Athlete::id).toList();
		LocalDate monday = GroupBrief.monday(today);
		Map<PersonId, Plan> plans = this.plans.of(ids, monday.plusDays(6));
		Map<UUID, LocalDate> last = this.lastEntries.knownOn(ids, today);
		List<GroupBrief> groups = new ArrayList<>();
		for (Group group : this.squad.groupsCoachedBy(coach).stream().map(Charge::group).toList()) {
			List<Athlete> own = athletes.stream().filter((one) -> group.id().equals(one.groupId())).toList();
			groups.add(GroupBrief.of(group.name(), own, new GroupBrief.Facts(today, plans, last,
					this.programmes.weeks(group.id(), monday, monday.plusDays(13)))));
		}
		model.addAttribute("today", today);
		model.addAttribute("groups", groups);
		model.addAttribute("text", this.text.of(today, groups, locale));
		model.addAttribute("clusterDays", GroupBrief.CLUSTER_DAYS);
		return "board/brief";
	}

}
