// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's own numbers, by section.
#include "app/desk/formats.h"
#include "app/slips/form_slip.h"
#include "app/slips/price_rules_form.h"
#include "app/slips/slip_makers.h"
#include "app/slips/week_rows.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "app/widgets/switch.h"
#include "core/facts/cutting_history.h"
#include "core/orders/film_waste.h"
#include "db/actions/shop_actions.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kGramsInKilogram = 1000;

QString numberText(double number) {
    return valueWords(Decimal{number});
}

class SettingsSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(SettingsSlip)

public:
    // `part` alone, or all there are.
    SettingsSlip(ShopDesk& shopDesk, std::optional<SettingsPart> part, QWidget* parent)
        : FormSlip(shopDesk, tr("Settings"),
                   tr("The shop’s own numbers. Those it came with are common practice, no more."), parent)
        , m_part(part)
        , m_before(shopDesk.shop()->facts.settings)
        , m_fairsToday(fairsOfToday(shopDesk.shop()->facts.fairs, shopDesk.now().today())) {
        if (has(SettingsPart::Shop))
            addShop();
        if (has(SettingsPart::Money))
            addMoney();
        if (has(SettingsPart::Bill))
            addBillRules(form(), m_before);
        if (has(SettingsPart::PriceList))
            addPriceList(form(), shopDesk.shop()->facts);
        if (has(SettingsPart::Hours))
            addHours();
        if (has(SettingsPart::Washing))
            addWashing();
        if (has(SettingsPart::Cutting))
            addCutting();
        if (has(SettingsPart::Pressing))
            addPressing();
        if (has(SettingsPart::Shop))
            beginAt("shopName");
        setAction(tr("Save these settings"));
        setLong();
    }

protected:
    void act() override {
        ShopSettings settings = m_before;
        if (has(SettingsPart::Shop))
            readShop(settings);
        if (has(SettingsPart::Money))
            readMoneyParts(settings);
        if (has(SettingsPart::Bill))
            readBillRules(form(), settings);
        if (has(SettingsPart::PriceList))
            readPriceList(form(), desk().shop()->facts, settings);
        if (has(SettingsPart::Hours))
            readHours(settings);
        if (has(SettingsPart::Washing))
            readWashing(settings);
        if (has(SettingsPart::Cutting))
            readCutting(settings);
        if (has(SettingsPart::Pressing))
            readPressing(settings);
        if (!form().isSound())
            return;
        if (settings == m_before)
            return finish();
        settle(db::changeSettings(desk().file(), settings));
    }

private:
    bool has(SettingsPart part) const { return !m_part || *m_part == part; }

    void whole(std::string_view name, const QString& label, const QString& unit, std::int64_t value) {
        form().number(name, label, unit, QString::number(value));
    }

    void addShop() {
        form().section(tr("Shop"));
        form().line("shopName", tr("Name"), words(m_before.shopName));
        askWhereOrdersAreTaken();
        form()
            .longLine("collectAt", tr("Orders are collected at"), words(m_before.collectAt))
            ->setPlaceholder(tr("for the claim ticket; empty: not printed"));
        form()
            .longLine("whenEdgeLifts", tr("When an edge lifts"), words(m_before.whenEdgeLifts))
            ->setPlaceholder(tr("for the care card; empty: not printed"));
        form()
            .longLine("address", tr("Address, semicolons between lines"), words(m_before.address))
            ->setPlaceholder(tr("for quotations, receipts and invoices"));
        form()
            .longLine("invoiceLines", tr("At the foot of invoices"), words(m_before.invoiceLines))
            ->setPlaceholder(tr("e.g. a bank account; small print"));
        for (const char* name : {"address", "invoiceLines"})
            form().optional(name);
        form().pair();
        form().line("currency", tr("Currency"), words(m_before.currency.code));
        form().line("currencySign", tr("Currency sign"), words(m_before.currency.sign));
        whole("currencyDecimals", tr("Decimals"), {}, m_before.currency.exponent);
    }

    // The fairs of today come first; a name of another place is typed.
    void askWhereOrdersAreTaken() {
        if (!m_fairsToday.empty()) {
            QVector<PickItem> places{{tr("The workshop")}};
            for (const std::string& fair : m_fairsToday)
                places.append({words(fair)});
            places.append({tr("Another place")});
            const auto named = std::ranges::find(m_fairsToday, m_before.fairName);
            const int chosen =
                m_before.fairName.empty() ? 0 : static_cast<int>(named - m_fairsToday.begin()) + 1;
            PickList* list = form().list("takenAt", tr("Orders are taken at"), places, chosen);
            QObject::connect(list, &PickList::currentIndexChanged, this, [this] { showPlaceTyped(); });
        }
        form()
            .line("fairName", m_fairsToday.empty() ? tr("Orders are taken at") : tr("Named"),
                  words(m_before.fairName))
            ->setPlaceholder(tr("the fair; empty: the workshop"));
        showPlaceTyped();
    }

    // The fair chosen, or none where the name is typed.
    std::optional<std::string> placeChosen() {
        if (m_fairsToday.empty())
            return std::nullopt;
        const auto place = static_cast<std::size_t>(form().chosen("takenAt"));
        if (place == 0)
            return std::string{};
        return place <= m_fairsToday.size() ? std::optional{m_fairsToday[place - 1]} : std::nullopt;
    }

    void showPlaceTyped() { form().setShown("fairName", !placeChosen()); }

    void readShop(ShopSettings& settings) {
        settings.shopName = plain(form().text("shopName"));
        settings.fairName = placeChosen().value_or(plain(form().text("fairName")));
        settings.collectAt = plain(form().text("collectAt"));
        settings.whenEdgeLifts = plain(form().text("whenEdgeLifts"));
        settings.address = plain(form().text("address"));
        settings.invoiceLines = plain(form().text("invoiceLines"));
        settings.currency.code = plain(form().text("currency"));
        settings.currency.sign = plain(form().text("currencySign"));
        settings.currency.exponent = static_cast<int>(form().whole("currencyDecimals", 0, 4));
    }

    void addMoney() {
        const auto amount = [&](Money money) { return moneyBare(money, m_before.currency); };
        form().section(tr("Money"));
        whole("depositPercent", tr("Deposit asked"), tr("% of the total"), m_before.depositPercent);
        form().turn("depositHolds", tr("A short deposit holds the work"), m_before.depositHolds);
        form().pair();
        form().line("minuteRate", tr("A minute of work"), amount(m_before.minuteRate));
        form().line("overheadPerGarment", tr("Overhead, a garment"), amount(m_before.overheadPerGarment));
        PickList* by = form().list(
            "pricedBy", tr("Prices are made from"),
            {{tr("the price: a margin")}, {tr("the cost: a mark-up")}, {tr("the shop’s price list")}},
            static_cast<int>(m_before.prices.by));
        QObject::connect(by, &PickList::currentIndexChanged, this, [this] { showMarginOrMarkUp(); });
        whole("marginPercent", tr("Margin"), tr("% of the price"), m_before.marginPercent);
        whole("markUpPercent", tr("Mark-up"), tr("% of the cost"), m_before.prices.markUpPercent);
        form().line("pricePoint", tr("Prices rounded up to"), amount(m_before.pricePoint));
        showMarginOrMarkUp();
    }

    // What is not on a price list is priced by the margin.
    void showMarginOrMarkUp() {
        const bool isMarkUp = form().chosen("pricedBy") == static_cast<int>(PricedBy::MarkUp);
        form().setShown("marginPercent", !isMarkUp);
        form().setShown("markUpPercent", isMarkUp);
    }

    void readMoneyParts(ShopSettings& settings) {
        settings.depositPercent = static_cast<int>(form().whole("depositPercent", 0, 100));
        settings.depositHolds = form().isOn("depositHolds");
        settings.minuteRate = form().money("minuteRate", settings.currency);
        settings.overheadPerGarment = form().money("overheadPerGarment", settings.currency);
        settings.prices.by = static_cast<PricedBy>(form().chosen("pricedBy"));
        if (settings.prices.by == PricedBy::MarkUp)
            settings.prices.markUpPercent = static_cast<int>(form().whole("markUpPercent", 0, 1000));
        else
            settings.marginPercent = static_cast<int>(form().whole("marginPercent", 0, 95));
        settings.pricePoint = form().money("pricePoint", settings.currency);
    }

    void addHours() {
        form().section(tr("Hours at the press"));
        m_week = new WeekRows(m_before.week);
        form().own("week", {}, m_week);
        QObject::connect(m_week, &WeekRows::changed, this, [this] { form().setError("week", {}); });
        QStringList days;
        for (const LocalDate day : m_before.closedDays)
            days.append(date(day));
        form()
            .line("closedDays", tr("Closed on, commas between"), days.join(QStringLiteral(", ")))
            ->setPlaceholder(tr("e.g. 24/12, 25/12"));
        QStringList other;
        for (const auto& [day, hours] : m_before.otherHours)
            if (day >= desk().now().today())
                other.append(hoursOfDay(day, hours));
        form()
            .line("otherHours", tr("Other hours on single days, commas between"),
                  other.join(QStringLiteral(", ")))
            ->setPlaceholder(tr("e.g. 3/12 9:00–19:00"));
        whole("planMarginPercent", tr("Allowance in promises, on top of the planned work"), tr("%"),
              m_before.planMarginPercent);
    }

    void readHours(ShopSettings& settings) {
        settings.week = m_week->read();
        if (!m_week->isSound())
            form().setError("week", tr("Hours: times such as 9:00 and 17:30."));
        settings.closedDays.clear();
        for (const QString& typed : between("closedDays")) {
            const auto day = readDate(typed, tr("“%1”").arg(typed), desk().now().today());
            if (day.ok())
                settings.closedDays.push_back(*day);
            else
                form().setError("closedDays", words(day.error().message));
        }
        readOtherHours(settings);
        settings.planMarginPercent = static_cast<int>(form().whole("planMarginPercent", 0, 200));
    }

    QStringList between(const char* field) {
        static const QRegularExpression commas(QStringLiteral("\\s*[,;]\\s*"));
        return form().text(field).trimmed().split(commas, Qt::SkipEmptyParts);
    }

    // Days that are past stay as they were: the form does not show them.
    void readOtherHours(ShopSettings& settings) {
        const LocalDate today = desk().now().today();
        std::erase_if(settings.otherHours, [&](const auto& other) { return other.first >= today; });
        for (const QString& typed : between("otherHours")) {
            const auto read = readHoursOfDay(typed, tr("“%1”").arg(typed), today);
            if (read.ok())
                settings.otherHours[read->first] = read->second;
            else
                form().setError("otherHours", words(read.error().message));
        }
    }

    void addWashing() {
        form().section(tr("Washing and stock"));
        form().pair();
        form().number("washerHolds", tr("A full load"), tr("kg"),
                      numberText(static_cast<double>(m_before.washerHolds.value) / kGramsInKilogram));
        whole("washTakes", tr("Time for a wash"), tr("min"), m_before.washTakes.count());
        form().pair();
        whole("dryingTakes", tr("Time for drying"), tr("h"), m_before.dryingTakes.count());
        form().number("shrinkLimitPercent", tr("Shrinking allowed"), tr("%"),
                      numberText(m_before.shrinkLimitPercent));
        form().pair();
        whole("blankLeadTime", tr("Blanks arrive within"), tr("days"), m_before.blankLeadTime.count());
        whole("filmLeadTime", tr("Film arrives within"), tr("days"), m_before.filmLeadTime.count());
        form().pair();
        whole("runOutPercent", tr("Risk of running out"), tr("%"), m_before.runOutPercent);
        whole("boughtToLast", tr("Bought to last for"), tr("days"), m_before.boughtToLast.count());
        whole("keepingPercent", tr("Carrying an unsold blank from a fair costs"), tr("% of its price"),
              m_before.keepingPercent);
    }

    void readWashing(ShopSettings& settings) {
        const double kilograms = form().decimal("washerHolds", 0.1, 100);
        settings.washerHolds = Grams{std::llround(kilograms * kGramsInKilogram)};
        settings.washTakes = Minutes{form().whole("washTakes", 1, 1440)};
        settings.dryingTakes = Hours{form().whole("dryingTakes", 0, 168)};
        settings.shrinkLimitPercent = form().decimal("shrinkLimitPercent", 0, 50);
        settings.blankLeadTime = Days{form().whole("blankLeadTime", 0, 365)};
        settings.filmLeadTime = Days{form().whole("filmLeadTime", 0, 365)};
        settings.runOutPercent =
            static_cast<int>(form().whole("runOutPercent", kLeastRunOutPercent, kMostRunOutPercent));
        settings.boughtToLast = Days{form().whole("boughtToLast", 0, 365)};
        settings.keepingPercent = static_cast<int>(form().whole("keepingPercent", 0, 100));
    }

    void addCutting() {
        form().section(tr("Cutting"));
        form().pair();
        whole("cutTakes", tr("Time for a cut, from roll in to cut off"), tr("min"),
              m_before.cutTakes.count());
        whole("weedingTakes", tr("Weeding a decal"), tr("s"), m_before.weedingTakes.count());
        form().pair();
        whole("decalGap", tr("Between decals"), tr("mm"), m_before.decalGap.value);
        whole("edgeMargin", tr("At the film’s edge"), tr("mm"), m_before.edgeMargin.value);
        whole("filmWastePercent", tr("Film round a decal, until the shop has cuts of its own"),
              tr("% of its area"), m_before.filmWastePercent);
        form().note(wasteWords());
    }

    // Which of the two prices are reckoned with.
    QString wasteWords() const {
        const CuttingHistory& cutting = desk().shop()->facts.cutting;
        const FilmWaste waste = filmWaste(cutting, m_before);
        if (waste.isMeasured)
            return tr("In the last %1 cuts the film round the decals was %2 % of their area; prices use "
                      "that.")
                .arg(cutting.cuts)
                .arg(waste.percent);
        return tr("Prices use this until %1 cuts are noted; %2 are.").arg(kFewestCuts).arg(cutting.cuts);
    }

    void readCutting(ShopSettings& settings) {
        settings.cutTakes = Minutes{form().whole("cutTakes", 0, 240)};
        settings.weedingTakes = Seconds{form().whole("weedingTakes", 0, 3600)};
        settings.decalGap = Millimetres{form().whole("decalGap", 0, 100)};
        settings.edgeMargin = Millimetres{form().whole("edgeMargin", 0, 100)};
        settings.filmWastePercent = static_cast<int>(form().whole("filmWastePercent", 0, 500));
    }

    void addPressing() {
        form().section(tr("At the press and after"));
        whole("mostOverUnderHeat", tr("Likely scorched when longer under heat by"), tr("s"),
              m_before.mostOverUnderHeat.count());
        form().pair();
        whole("restBeforeWash", tr("Rest before a wash"), tr("h"), m_before.restBeforeWash.count());
        whole("betterRest", tr("Better"), tr("h"), m_before.betterRest.count());
        whole("readingsGoStaleAfter", tr("A reading is valid for"), tr("h"),
              m_before.readingsGoStaleAfter.count());
    }

    void readPressing(ShopSettings& settings) {
        settings.mostOverUnderHeat = Seconds{form().whole("mostOverUnderHeat", 1, 600)};
        settings.restBeforeWash = Hours{form().whole("restBeforeWash", 0, 336)};
        settings.betterRest = Hours{form().whole("betterRest", 0, 336)};
        settings.readingsGoStaleAfter = Hours{form().whole("readingsGoStaleAfter", 1, 8784)};
    }

    std::optional<SettingsPart> m_part;
    ShopSettings m_before;
    std::vector<std::string> m_fairsToday;
    WeekRows* m_week = nullptr;
};

} // namespace

Slip* makeSettings(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    return new SettingsSlip(desk, matter.settings, parent);
}

} // namespace holdfast::app
