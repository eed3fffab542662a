// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/shop_desk.h"

#include "app/desk/backups_beside.h"
#include "db/tables/facts.h"

#include <utility>

namespace holdfast::app {

namespace {

constexpr int kMinute = 60'000;

// This many readings are loaded and summed up in some milliseconds: nothing is to be seen of it.
constexpr std::int64_t kFewReadings = 20'000;

} // namespace

SlipTarget SlipTarget::of(const Finding& finding, const Garment& garment) {
    SlipTarget matter;
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
    , m_clock(std::move(clock))
    , m_countWatch(m_clock) {
    m_listener = m_file->onChanged([this](const db::ChangedTables& tables) {
        if (tables.contains("climate_reading") && !m_reckonedBeside)
            goOnWithClimate();
        forgetReckoned();
        if (m_reckonedBeside)
            show(std::exchange(m_reckonedBeside, nullptr));
        emit changed(tables);
    });
    connect(&m_countWatch, &CountWatch::ended, this, &ShopDesk::countsEnded);
    connect(&m_planBeside, &PlanBeside::found, this, &ShopDesk::takePlan);
    if (isClimateLong())
        readClimateBeside();
    m_minute.setInterval(kMinute);
    connect(&m_minute, &QTimer::timeout, this, [this] {
        forgetReckoned();
        emit minutePassed();
    });
    m_minute.start();
    m_backups = std::make_unique<BackupsBeside>(*this);
}

ShopDesk::~ShopDesk() {
    m_backups.reset(); // waits for what is under way
    m_file->forget(m_listener);
}

void ShopDesk::takeOver(WrittenBeside written) {
    if (written.shop) {
        m_climateBeside.drop();
        m_climate = written.shop->climate;
        m_reckoner = std::move(written.reckoner);
        m_reckonedBeside = std::move(written.shop);
    }
    done(m_file->catchUp(written.touched));
    m_reckonedBeside.reset();
}

bool ShopDesk::isClimateLong() {
    const auto isLong = m_file->read(
        [](db::Connection& connection) { return db::hasMoreReadingsThan(connection, kFewReadings); });
    return !m_file->path().empty() && isLong.ok() && *isLong;
}

void ShopDesk::readClimateBeside() {
    m_climateBeside.begin(
        [shop = m_file->path(), now = now()](auto& reporter) {
            return readClimate(shop, now, [&](double share) { return reporter.report(share); });
        },
        [this](std::optional<ClimateRead> read) { takeClimate(std::move(read)); },
        [this](double share) { emit climateProgressed(share); });
}

void ShopDesk::takeClimate(std::optional<ClimateRead> read) {
    if (read) {
        m_climate = std::move(read->climate);
        m_reckoner = std::move(read->reckoner);
    } else {
        m_climate.reset(); // shop() tries for itself, and says why it cannot be read
    }
    forgetReckoned();
    emit changed({"climate_reading"});
}

// A reading more is no reason to load a million again. Where they must be loaded, those known before are used
// until then: a hold neither comes nor goes for half a second.
void ShopDesk::goOnWithClimate() {
    if (m_climateBeside.isUnderWay()) {
        readClimateBeside();
        return;
    }
    if (!m_climate)
        return;
    auto longer =
        m_file->read([&](db::Connection& connection) { return db::climateGoneOn(connection, *m_climate); });
    if (longer.ok() && *longer)
        m_climate = std::move(*longer);
    else if (isClimateLong())
        readClimateBeside();
    else
        m_climate.reset();
}

void ShopDesk::forgetReckoned() {
    m_planBeside.drop();
    m_shop.reset();
    m_walk.reset();
}

const std::shared_ptr<const ReckonedShop>& ShopDesk::shop() {
    if (!m_shop)
        reckon();
    return m_shop;
}

void ShopDesk::reckon() {
    const Now moment = now();
    PlanSearch search;
    search.goesOnFrom = m_bestOrder;
    search.shown = m_orderShown;
    auto reckoned = m_file->read([&](db::Connection& connection) {
        if (!m_climate && !m_climateBeside.isUnderWay())
            m_climate = db::loadClimate(connection);
        return reckonShop(db::loadOpenFacts(connection), m_climate.value_or(ClimateHistory{}),
                          db::loadRecentUse(connection, moment.instant), m_reckoner, moment, search);
    });
    if (!reckoned.ok()) {
        // Never old figures. The shell shows the reason in place of an empty shop.
        m_shop = reckonShop({}, {}, {}, m_reckoner, moment);
        m_unreadable = reckoned.error().message;
        emit failed(words(m_unreadable));
        return;
    }
    show(std::move(*reckoned));
}

void ShopDesk::show(std::shared_ptr<const ReckonedShop> shop) {
    m_unreadable = {};
    m_shop = std::move(shop);
    m_countWatch.see(*m_shop);
    m_orderShown = m_shop->plan.order;
    m_bestOrder = m_shop->plan.bestOrder;
    if (!m_shop->plan.isCutShort || awaitsClimate())
        return;
    PlanRequest request = planRequest(m_shop->facts, m_shop->assessments, m_shop->now);
    request.search.goesOnFrom = m_bestOrder;
    m_planBeside.begin(std::move(request));
}

// The walk goes on from the best order known; what is shown changes only where that is worth it.
void ShopDesk::takePlan(const DayPlan& plan) {
    if (!m_shop || !plan.isBetterThan(m_shop->plan))
        return;
    m_bestOrder = plan.order;
    if (!isWorthTheChange(plan, m_shop->plan))
        return;
    auto shop = std::make_shared<ReckonedShop>(*m_shop);
    shop->plan = plan;
    m_shop = std::move(shop);
    m_orderShown = plan.order;
    m_walk.reset();
    emit replanned();
}

WhatIsWrong ShopDesk::wrong() {
    WhatIsWrong wrong = together(shop()->facts.unread, m_checked);
    wrong.unreadable = m_unreadable;
    return wrong;
}

void ShopDesk::takeFindings(db::QuickFindings found) {
    m_checked = std::move(found);
    emit wrongChanged();
}

const Walk& ShopDesk::walk() {
    if (!m_walk)
        m_walk = walkOf(*shop());
    return *m_walk;
}

void ShopDesk::free(FreeingAct act, const SlipTarget& matter) {
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
