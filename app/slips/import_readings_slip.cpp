// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/import_readings_slip.h"

#include "app/desk/formats.h"
#include "app/slips/log_reading.h"
#include "app/slips/place_pick.h"
#include "app/slips/quiet_wait.h"
#include "app/slips/readings_import.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/progress_beads.h"
#include "db/actions/film_actions.h"

#include <QFileDialog>
#include <QFileInfo>

namespace holdfast::app {

namespace {

constexpr int kWholeBar = 1000;
constexpr std::size_t kSkippedSaid = 5;

QString grouped(std::size_t number) {
    return valueWords(static_cast<std::int64_t>(number));
}

} // namespace

ImportReadingsSlip::ImportReadingsSlip(ShopDesk& shopDesk, std::optional<PlaceId> place, QWidget* parent)
    : FormSlip(shopDesk, tr("Import readings"),
               tr("The file of a climate logger: text with a time, a temperature and mostly a humidity in "
                  "each line."),
               parent)
    , m_place(std::make_unique<PlacePick>(form(), shopDesk, tr("Where the logger was"), place,
                                          PlacesFor::Readings))
    , m_found(new Banner)
    , m_details((new Label(QString(), Type::Small, &Tokens::ink2))->wrapped())
    , m_progress(new ProgressBeads)
    , m_stop(new Button(tr("Stop"), QStringLiteral("close"))) {
    auto* path = form().line("path", tr("Log file"));
    path->setPlaceholder(tr("the whole path"));
    auto* browse = new Button(tr("Choose a file"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("browseFile"));
    connect(browse, &QAbstractButton::clicked, this, &ImportReadingsSlip::choosePath);
    form().add(browse);
    m_dates = form().segments("dateOrder", tr("Which day"), {QString(), QString()});
    form().add(m_found);
    form().add(m_details);
    form().add(m_progress);
    form().add(m_stop);
    m_found->setObjectName(QStringLiteral("foundReadings"));
    m_stop->setObjectName(QStringLiteral("stopImport"));
    connect(path, &Field::edited, this, &ImportReadingsSlip::forgetFound);
    connect(m_dates, &Choice::chosen, this, [this](int at) {
        m_dateOrder = at == 0 ? DateOrder::DayFirst : DateOrder::MonthFirst;
        if (!isBusy())
            readFile();
    });
    connect(m_stop, &QAbstractButton::clicked, this, [this] {
        m_reading.stop();
        m_import.stop();
    });
    endWork();
    forgetFound();
}

ImportReadingsSlip::~ImportReadingsSlip() = default;

bool ImportReadingsSlip::isBusy() const {
    return m_reading.isUnderWay() || m_import.isUnderWay();
}

void ImportReadingsSlip::choosePath() {
    const QFileInfo now(form().text("path"));
    const QString chosen = QFileDialog::getOpenFileName(this, tr("The logger’s file"), now.absolutePath(),
                                                        tr("Text files (*.csv *.txt *.tsv);;All files (*)"),
                                                        nullptr, QFileDialog::DontUseNativeDialog);
    if (chosen.isEmpty())
        return;
    form().findChild<Field*>(QStringLiteral("path"))->setText(chosen);
    forgetFound();
    submit();
}

void ImportReadingsSlip::act() {
    if (isBusy())
        return;
    if (m_log)
        import();
    else
        readFile();
}

void ImportReadingsSlip::readFile() {
    form().clearErrors();
    const QString path = form().text("path");
    if (path.isEmpty())
        return form().setError("path", tr("Say which file: its whole path."));
    m_place->check();
    if (m_isAsking && !m_dateOrder)
        form().chosen("dateOrder");
    if (!form().isSound())
        return;
    m_log.reset();
    setAction(tr("Read the file"));
    showWork(tr("Reading the file"), 0);
    m_readIn = m_dateOrder;
    m_reading.begin(
        [path, offsetAt = desk().clock().offsetAt, order = m_dateOrder](auto& reporter) {
            return readLog(path, offsetAt, order, [&](double share) { return reporter.report(share); });
        },
        [this](const Result<ClimateLog>& log) { showFound(log); },
        [this](double share) { showWork(tr("Reading the file"), share); });
}

void ImportReadingsSlip::forgetFound() {
    m_log.reset();
    m_dateOrder.reset();
    m_isAsking = false;
    form().setShown("dateOrder", false);
    m_found->hide();
    m_details->hide();
    setAction(tr("Read the file"));
}

void ImportReadingsSlip::showFound(const Result<ClimateLog>& log) {
    endWork();
    if (m_readIn != m_dateOrder)
        return readFile(); // another order was chosen meanwhile
    if (!log.ok()) {
        say(log.error());
        form().focusFirstError();
        return;
    }
    if (!m_dateOrder)
        showDateOrder(*log);
    m_isAsking = log->mustBeAsked();
    if (m_isAsking) {
        m_found->hide();
        m_details->hide();
        form().focusOn("dateOrder");
        return;
    }
    const std::size_t count = log->readings.size();
    if (count == 0) {
        form().setError("path", tr("There is no reading in this file."));
        form().focusFirstError();
        return;
    }
    const Now now = desk().now();
    const LocalDate first = dateOf(now.toLocal(log->readings.front().at));
    const LocalDate last = dateOf(now.toLocal(log->readings.back().at));
    m_found->set(Tone::Ready,
                 tr("%1 reading found,|%1 readings found,", nullptr, howMany(count)).arg(grouped(count)),
                 first == last ? tr("all of %1.").arg(date(first))
                               : tr("from %1 to %2.").arg(date(first), date(last)));
    m_details->setText(detailsOf(*log).join(u'\n'));
    m_found->show();
    m_details->show();
    m_log = *log;
    setAction(tr("Import %1 reading|Import %1 readings", nullptr, howMany(count)).arg(grouped(count)));
    action()->setFocus(Qt::OtherFocusReason);
}

QStringList ImportReadingsSlip::detailsOf(const ClimateLog& log) const {
    QStringList details;
    details.append(log.gaps == 0 ? tr("No gap longer than three days.")
                                 : tr("%n gap longer than three days; it counts as unrecorded.|"
                                      "%n gaps longer than three days; they count as unrecorded.",
                                      nullptr, howMany(log.gaps)));
    if (log.duplicates > 0)
        details.append(
            tr("%n line repeats a time; the first counts.|%n lines repeat a time; the first counts.", nullptr,
               howMany(log.duplicates)));
    if (log.withoutHumidity == log.readings.size())
        details.append(tr("Temperature alone: how old the rolls are follows from it; the humidity stays "
                          "unknown."));
    else if (log.withoutHumidity > 0)
        details.append(tr("%n reading has no humidity.|%n readings have no humidity.", nullptr,
                          howMany(log.withoutHumidity)));
    if (log.wasFahrenheit)
        details.append(tr("Its °F were turned into °C."));
    if (log.skippedCount > 0) {
        details.append(tr("%n line was passed over:|%n lines were passed over, the first:", nullptr,
                          howMany(log.skippedCount)));
        for (std::size_t at = 0; at < std::min(kSkippedSaid, log.skipped.size()); ++at)
            details.append(words(log.skipped[at]));
    }
    return details;
}

// Asked where nothing in the file shows it; else what was taken for likely can be chosen otherwise.
void ImportReadingsSlip::showDateOrder(const ClimateLog& log) {
    form().setShown("dateOrder", log.doubtfulDate.has_value());
    if (!log.doubtfulDate)
        return;
    const DoubtfulDate& doubtful = *log.doubtfulDate;
    form().setLabel("dateOrder", tr("Which day is %1?").arg(words(doubtful.written)));
    m_dates->setItems({{.text = date(doubtful.dayFirst)}, {.text = date(doubtful.monthFirst)}});
    m_dates->setChosen(log.dateOrder ? static_cast<int>(*log.dateOrder) : -1);
}

void ImportReadingsSlip::import() {
    m_place->check();
    if (!form().isSound())
        return;
    showWork(tr("Writing the readings"), 0);
    m_wait = std::make_unique<QuietWait>(m_stop);
    connect(m_wait.get(), &QuietWait::stopAsked, this, [this] { m_import.stop(); });
    m_import.begin(
        [&window = desk().file(), known = desk().known(), chosen = m_place->chosen(),
         readings = m_log->readings](auto& reporter) {
            return importBeside(window, known, chosen, readings,
                                [&](double share) { return reporter.report(share); });
        },
        [this](ReadingsWritten outcome) { endImport(std::move(outcome)); },
        [this](double share) { showWork(tr("Writing the readings"), share); });
}

void ImportReadingsSlip::endImport(ReadingsWritten outcome) {
    m_wait.reset();
    endWork();
    const auto& imported = outcome.imported;
    if (imported.ok())
        desk().takeOver(std::move(outcome.written));
    if (settle(imported) && imported->alreadyThere > 0)
        desk().say(tr("%1 reading added; %2 were there already.|%1 readings added; %2 were there already.",
                      nullptr, howMany(imported->added))
                       .arg(valueWords(imported->added), valueWords(imported->alreadyThere)));
}

void ImportReadingsSlip::showWork(const QString& words, double share) {
    m_progress->set(static_cast<int>(share * kWholeBar), kWholeBar, words);
    m_progress->show();
    m_stop->show();
    action()->setCannot(words);
}

void ImportReadingsSlip::endWork() {
    m_progress->hide();
    m_stop->hide();
    action()->setCannot({});
}

Slip* makeImportReadings(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    std::optional<PlaceId> place = matter.place;
    if (!place)
        place = lastUsedPlace(*desk.shop());
    return new ImportReadingsSlip(desk, place, parent);
}

} // namespace holdfast::app
