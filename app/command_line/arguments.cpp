// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/arguments.h"

#include <array>
#include <utility>
#include <vector>

namespace holdfast::app {

namespace {

constexpr std::array<std::pair<const char*, ReportName>, 8> kReports{{
    {"walk", ReportName::Walk},
    {"use-first", ReportName::UseFirst},
    {"holds", ReportName::Holds},
    {"blanks", ReportName::Blanks},
    {"buy", ReportName::Buy},
    {"promise", ReportName::Promise},
    {"cut", ReportName::Cut},
    {"figures", ReportName::Figures},
}};

constexpr std::array<std::pair<const char*, Verb>, 14> kVerbs{{
    {"report", Verb::Report},
    {"tour", Verb::Tour},
    {"papers", Verb::Papers},
    {"check", Verb::Check},
    {"mend", Verb::Mend},
    {"save-what-can-be", Verb::Save},
    {"backup", Verb::Backup},
    {"backups", Verb::Backups},
    {"put-back", Verb::PutBack},
    {"export", Verb::Export},
    {"import", Verb::Import},
    {"take-orders", Verb::TakeOrders},
    {"due-days", Verb::DueDays},
    {"forget", Verb::Forget},
}};

bool looksLikeFile(const std::string& word) {
    return word.find_first_of("./") != std::string::npos;
}

class Reader {
public:
    explicit Reader(std::span<const std::string> words)
        : m_words(words) {}

    Result<Arguments> read() {
        for (m_at = 0; m_at < m_words.size(); ++m_at)
            if (const auto taken = take(m_words[m_at]); !taken.ok())
                return taken.error();
        return checked();
    }

private:
    Result<Done> take(const std::string& word) {
        if (word == "--shop")
            return takeShop();
        if (word == "--demo") {
            m_arguments.isDemo = true;
            return Done{};
        }
        if (word == "--on")
            return takeDay();
        if (word == "--csv") {
            m_arguments.asCsv = true;
            return Done{};
        }
        if (word == "--json") {
            m_arguments.asJson = true;
            return Done{};
        }
        if (word == "--scale")
            return takeScale();
        if (word == "--yes") {
            m_arguments.isSure = true;
            return Done{};
        }
        if (word == "--nameless") {
            m_arguments.isNameless = true;
            return Done{};
        }
        if (word == "--help" || word == "-h" || word == "help")
            return takeVerb(Verb::Help, word);
        if (word == "--version")
            return takeVerb(Verb::Version, word);
        if (word.starts_with("-") && word != "-")
            return plainError(said("There is no option {word}. See holdfast --help.", {{"word", word}}));
        return takePlainWord(word);
    }

    Result<std::string> following(Phrase what) {
        if (m_at + 1 >= m_words.size())
            return plainError(
                said("{word} needs {what} after it.", {{"word", m_words[m_at]}, {"what", what}}));
        return m_words[++m_at];
    }

    Result<Done> takeShop() {
        const auto file = following(phrase("a file"));
        if (!file.ok())
            return file.error();
        if (file->empty())
            return plainError(said("--shop needs a file after it."));
        m_arguments.shop = std::filesystem::path(*file);
        return Done{};
    }

    Result<Done> takeFile(const std::string& word) {
        if (m_arguments.shop)
            return plainError(said("One shop at a time: “{word}” is not expected here.", {{"word", word}}));
        m_arguments.shop = std::filesystem::path(word);
        m_isFileAlone = true;
        return Done{};
    }

    Result<Done> takeDay() {
        const auto day = following(phrase("a day, such as 2026-11-25,"));
        if (!day.ok())
            return day.error();
        m_arguments.on = parseIsoDate(*day);
        if (!m_arguments.on)
            return plainError(said("--on needs a day that exists, such as 2026-11-25; “{day}” is not a day.",
                                   {{"day", *day}}));
        return Done{};
    }

    Result<Done> takeScale() {
        const auto scale = following(phrase("1 or 2"));
        if (!scale.ok())
            return scale.error();
        if (*scale != "1" && *scale != "2")
            return plainError(said("--scale is 1 or 2, not “{scale}”.", {{"scale", *scale}}));
        m_arguments.scale = *scale == "2" ? 2 : 1;
        m_isScaled = true;
        return Done{};
    }

    Result<Done> takeVerb(Verb verb, const std::string& word) {
        if (m_hasVerb)
            return plainError(said("One thing at a time: “{word}” is not expected here.", {{"word", word}}));
        m_hasVerb = true;
        m_arguments.verb = verb;
        return Done{};
    }

    Result<Done> takePlainWord(const std::string& word) {
        if (m_hasVerb && wantsTarget() && m_arguments.target.empty()) {
            m_arguments.target = word;
            return Done{};
        }
        for (const auto& [code, verb] : kVerbs)
            if (word == code)
                return verb == Verb::Report ? takeReport(word) : takeVerb(verb, word);
        if (m_hasVerb)
            return plainError(said("“{word}” is not expected here. See holdfast --help.", {{"word", word}}));
        if (looksLikeFile(word))
            return takeFile(word);
        return plainError(said(
            "There is no “{word}”. Ask for report, tour, papers, check, mend, "
            "save-what-can-be, backup, backups, put-back, export, import, take-orders, due-days or forget.",
            {{"word", word}}));
    }

    Result<Done> takeReport(const std::string& word) {
        if (const auto verb = takeVerb(Verb::Report, word); !verb.ok())
            return verb;
        const auto name =
            following(phrase("one of walk, use-first, holds, blanks, buy, promise, cut, figures"));
        if (!name.ok())
            return name.error();
        for (const auto& [code, report] : kReports)
            if (*name == code) {
                m_arguments.report = report;
                return Done{};
            }
        return plainError(
            said("There is no report “{report}”. Ask for walk, use-first, holds, blanks, buy, promise, "
                 "cut or figures.",
                 {{"report", *name}}));
    }

    bool wantsTarget() const {
        return m_arguments.verb == Verb::Tour || m_arguments.verb == Verb::Papers ||
               m_arguments.verb == Verb::Backup || m_arguments.verb == Verb::Export ||
               m_arguments.verb == Verb::Import || m_arguments.verb == Verb::Save ||
               m_arguments.verb == Verb::PutBack || m_arguments.verb == Verb::Forget ||
               m_arguments.verb == Verb::DueDays || m_arguments.verb == Verb::TakeOrders;
    }
    Phrase targetWanted() const {
        switch (m_arguments.verb) {
        case Verb::Tour:
            return phrase("tour needs the folder to draw into after it.");
        case Verb::Papers:
            return phrase("papers needs the folder to write into after it.");
        case Verb::Export:
            return phrase("export needs the folder to write into after it.");
        case Verb::Import:
            return phrase("import needs the file to read after it.");
        case Verb::TakeOrders:
            return phrase("take-orders needs the file of the web shop after it.");
        case Verb::DueDays:
            return phrase("due-days needs the calendar file to write after it.");
        case Verb::PutBack:
            return phrase("put-back needs the backup after it.");
        case Verb::Forget:
            return phrase("forget needs the customer after it: a name, a phone number or an order’s number.");
        case Verb::Save:
            return phrase("save-what-can-be needs the new file after it.");
        default:
            return phrase("backup needs the new file after it.");
        }
    }

    Result<Arguments> checked() const {
        if (m_arguments.isDemo && m_arguments.shop)
            return plainError(m_isFileAlone ? said("A shop file and --demo exclude each other.")
                                            : said("--shop and --demo exclude each other."));
        if (m_isFileAlone && m_arguments.verb != Verb::Window)
            return plainError(said("With a verb, the shop is named by --shop: --shop {shop}.",
                                   {{"shop", m_arguments.shop->string()}}));
        if (wantsTarget() && m_arguments.target.empty())
            return plainError(targetWanted());
        if (m_arguments.asJson && m_arguments.verb != Verb::Report)
            return plainError(said("--json goes with report only."));
        if (m_arguments.asCsv && m_arguments.verb != Verb::Report)
            return plainError(said("--csv goes with report only."));
        if (m_arguments.asCsv && m_arguments.asJson)
            return plainError(said("--csv and --json exclude each other."));
        if (m_arguments.isSure && m_arguments.verb != Verb::PutBack && m_arguments.verb != Verb::TakeOrders)
            return plainError(said("--yes goes with put-back and take-orders only."));
        if (m_arguments.isNameless && m_arguments.verb != Verb::DueDays)
            return plainError(said("--nameless goes with due-days only."));
        if (m_isScaled && m_arguments.verb != Verb::Tour)
            return plainError(said("--scale goes with tour only."));
        return m_arguments;
    }

    std::span<const std::string> m_words;
    std::size_t m_at = 0;
    Arguments m_arguments;
    bool m_hasVerb = false;
    bool m_isScaled = false;
    bool m_isFileAlone = false; // the shop was named without --shop
};

} // namespace

bool needsFigures(ReportName report) {
    return report == ReportName::Figures || report == ReportName::Buy;
}

Result<Arguments> readArguments(std::span<const std::string> words) {
    return Reader{words}.read();
}

std::string usage() {
    return "holdfast [FILE]\n"
           "holdfast [--shop FILE | --demo] [--on YYYY-MM-DD] [VERB]\n"
           "\n"
           "With no verb the window opens, with the shop FILE where one is named. A window that has that "
           "shop\n"
           "open already comes to the front instead. Without FILE or --shop it is the shop of this "
           "computer.\n"
           "\n"
           "  report walk        the day at the press: heat runs, cooling rack, what is aside\n"
           "  report use-first   rolls to use up first, and what their rules say\n"
           "  report holds       every garment that is held or cautioned, why, and what is needed\n"
           "  report blanks      blanks on the rail: washed, unwashed, reserved, short\n"
           "  report buy         what to buy now, by supplier, by its use and what orders need\n"
           "  report promise     the day an order taken now could be promised; each open order's promise\n"
           "  report cut         decals to cut, film by film, nested on the rolls there are\n"
           "  report figures     what came back and why, promises kept, takings, film, since the first "
           "order\n"
           "      --json         the same as JSON (keys: docs/command-line.md)\n"
           "      --csv          the same as comma-separated values; of buy\n"
           "  tour DIR           draws every place to PNG, by day and in the evening\n"
           "      --scale 2      at twice the size\n"
           "  papers DIR         what is printed for the day: day sheet, tickets, cards, tags, labels, cut "
           "sheets\n"
           "  check              is the shop file whole: every row against its history, ledgers, search\n"
           "  mend               writes rows again as their history has them, and the order book’s lines "
           "and\n"
           "                     the search; no window may have the shop open\n"
           "  save-what-can-be NEW\n"
           "                     brings what can be read of a damaged shop into the new file NEW\n"
           "  backup FILE        a whole copy of the shop in a new file\n"
           "  backups            those that are made by themselves, the newest first\n"
           "  put-back BACKUP    says what would be lost if the shop became that backup; with --yes it "
           "does,\n"
           "                     and what was there before is kept as a backup; no window may have the shop "
           "open\n"
           "  export DIR         the whole shop as comma-separated values, a file for each thing of the "
           "trade\n"
           "  import FILE        reads one such file in: customers, blank styles, blanks, films, rolls, "
           "places, "
           "readings\n"
           "  take-orders FILE   says what the orders of a web shop’s file would be; with --yes it takes "
           "them all,\n"
           "                     and then no window may have the shop open\n"
           "  due-days FILE.ics  the promised day of each open order as a calendar (iCalendar)\n"
           "      --nameless     without the customers’ names\n"
           "  forget CUSTOMER    takes the customer of this name, phone number or order number out for "
           "good,\n"
           "                     and says which backups still have the name; no window may have the shop "
           "open\n"
           "\n"
           "  --on YYYY-MM-DD    the day for everything, from 09:00 (the demo begins at 09:40)\n"
           "  --help, --version\n"
           "\n"
           "Ends with 0 when done, 1 when the work could not be done (one line says why), 2 on wrong "
           "usage.\n";
}

} // namespace holdfast::app
