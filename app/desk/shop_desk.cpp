#include "app/desk/shop_desk.h"

#include "db/tables/facts.h"

namespace holdfast::app {

namespace {

constexpr int kMinute = 60'000;

// Facts from the file, or the reason why they cannot be read.
Result<std::shared_ptr<const ReckonedShop>> reckonFrom(db::Shop& file, std::optional<ClimateHistory>& climate,
                                                       ClimateReckoner& reckoner, const Now& now) {
    return file.read([&](db::Connection& connection) {
        if (!climate)
            climate = db::loadClimate(connection);
        return reckonShop(db::loadOpenFacts(connection), *climate, db::loadRecentUse(connection, now.instant),
                          reckoner, now);
    });
}

} // namespace

Matter Matter::of(const Finding& finding, const Garment& garment) {
    Matter matter;
    matter.order = garment.order;
    matter.garment = garment.id;
    matter.size = QString::fromStdString(garment.size);
    matter.colour = garment.colour;
    matter.rule = finding.rule;
    matter.decal = finding.decal;
    matter.roll = finding.roll;
    matter.film = finding.film;
    matter.lot = finding.lot ? finding.lot : garment.lot;
    matter.style = garment.style;
    matter.place = finding.place;
    matter.press = finding.press;
    return matter;
}

ShopDesk::ShopDesk(std::unique_ptr<db::Shop> file, Clock clock, QObject* parent)
    : QObject(parent)
    , m_file(std::move(file))
    , m_clock(std::move(clock)) {
    m_listener = m_file->onChanged([this](const db::ChangedTables& tables) {
        if (tables.contains("climate_reading") && !m_isClimateNew)
            goOnWithClimate();
        forgetReckoned();
        emit changed(tables);
    });
    connect(&m_planBeside, &PlanBeside::found, this, &ShopDesk::takePlan);
    m_minute.setInterval(kMinute);
    connect(&m_minute, &QTimer::timeout, this, [this] {
        forgetReckoned();
        emit minutePassed();
    });
    m_minute.start();
}

ShopDesk::~ShopDesk() {
    m_file->forget(m_listener);
}

void ShopDesk::takeOver(WrittenBeside written) {
    if (written.isReckoned) {
        m_climate = std::move(written.climate);
        m_reckoner = std::move(written.reckoner);
        m_isClimateNew = true;
    }
    done(m_file->catchUp(written.touched));
    m_isClimateNew = false;
}

// A reading more is no reason to load a million again.
void ShopDesk::goOnWithClimate() {
    if (!m_climate)
        return;
    auto longer =
        m_file->read([&](db::Connection& connection) { return db::climateGoneOn(connection, *m_climate); });
    m_climate = longer.ok() ? std::move(*longer) : std::nullopt;
}

void ShopDesk::forgetReckoned() {
    m_planBeside.drop();
    m_shop.reset();
    m_walk.reset();
}

const std::shared_ptr<const ReckonedShop>& ShopDesk::shop() {
    if (!m_shop) {
        auto reckoned = reckonFrom(*m_file, m_climate, m_reckoner, now());
        if (reckoned.ok()) {
            m_shop = std::move(*reckoned);
            if (m_shop->plan.isCutShort)
                m_planBeside.begin(planRequest(m_shop->facts, m_shop->assessments, m_shop->now));
        } else {
            // A file that can no longer be read shows an empty shop and the reason, never old figures.
            m_shop = reckonShop({}, {}, {}, m_reckoner, now());
            emit failed(QString::fromStdString(reckoned.error().message));
        }
    }
    return m_shop;
}

void ShopDesk::takePlan(const DayPlan& plan) {
    if (!m_shop || !plan.isBetterThan(m_shop->plan))
        return;
    auto shop = std::make_shared<ReckonedShop>(*m_shop);
    shop->plan = plan;
    m_shop = std::move(shop);
    m_walk.reset();
    emit replanned();
}

const Walk& ShopDesk::walk() {
    if (!m_walk)
        m_walk = walkOf(*shop());
    return *m_walk;
}

void ShopDesk::free(FreeingAct act, const Matter& matter) {
    switch (act) {
    case FreeingAct::WashBlank:
        emit placeAsked(PlaceName::BlankRail, matter);
        return;
    case FreeingAct::MarkDry:
        emit slipAsked(SlipName::MarkDry, matter);
        return;
    case FreeingAct::MarkNotPrewashed:
        emit slipAsked(SlipName::MarkNotPrewashed, matter);
        return;
    case FreeingAct::ReadLabel:
        emit slipAsked(SlipName::ReadLabel, matter);
        return;
    case FreeingAct::ChooseFilm:
        emit slipAsked(SlipName::ChangeFilm, matter);
        return;
    case FreeingAct::ChooseBlank:
        emit slipAsked(SlipName::ChangeBlank, matter);
        return;
    case FreeingAct::ReceiveBlanks:
        emit slipAsked(SlipName::ReceiveBlanks, matter);
        return;
    case FreeingAct::ReceiveRoll:
        emit slipAsked(SlipName::ReceiveRoll, matter);
        return;
    case FreeingAct::TestStrip:
        emit slipAsked(SlipName::TestStrip, matter);
        return;
    case FreeingAct::MoveRoll:
        emit slipAsked(SlipName::RollMove, matter);
        return;
    case FreeingAct::RecordReading:
        emit slipAsked(SlipName::RecordReading, matter);
        return;
    case FreeingAct::EnterRecipe:
    case FreeingAct::ConfirmRecipe:
        emit slipAsked(SlipName::Recipe, matter);
        return;
    case FreeingAct::CheckPress:
        emit slipAsked(SlipName::CheckPress, matter);
        return;
    case FreeingAct::AddPress:
        emit slipAsked(SlipName::AddPress, matter);
        return;
    case FreeingAct::ChooseWayRound:
        emit slipAsked(SlipName::ChooseWayRound, matter);
        return;
    case FreeingAct::ReorderLayers:
        emit slipAsked(SlipName::Layers, matter);
        return;
    case FreeingAct::ConfirmWording:
        emit slipAsked(SlipName::ConfirmWording, matter);
        return;
    case FreeingAct::TakePayment:
        emit slipAsked(SlipName::TakeMoney, matter);
        return;
    case FreeingAct::NoteLawChecked:
        emit slipAsked(SlipName::NoteLawChecked, matter);
        return;
    }
}

} // namespace holdfast::app
