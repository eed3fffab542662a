// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shop_fixture.h"

#include "db/actions/blank_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "db/tables/facts.h"

#include <QApplication>
#include <QKeyEvent>
#include <QTest>

#include <cstdio>
#include <cstdlib>

namespace holdfast::app::test {

namespace {

constexpr Hours kWashAndDry{48};

BlankStyle usualStyle(const std::string& name, LocalDate today) {
    BlankStyle style;
    style.name = name;
    style.outline = "tee";
    style.sizes = {"S", "M", "L", "XL"};
    style.colours = {{{}, "Moss", 0x66754c}, {{}, "Chalk", 0xf1efe6}};
    style.weight = 180_g;
    style.cost = {450};
    FabricLabel label;
    label.fibres = {{Fibre::Cotton, 100}};
    label.highestSafe = 200_C;
    label.readOn = today;
    style.label = label;
    return style;
}

Film usualFilm(const std::string& shade) {
    Film film;
    film.finish = "Marram Soft";
    film.shade = shade;
    film.rgb = 0x34457a;
    film.shelfLife = Days{365};
    Recipe recipe;
    recipe.temperature = 150_C;
    recipe.dwell = Seconds{12};
    recipe.coolBeforePeel = Seconds{40};
    recipe.confirmedBy = "maker's sheet, 3 Nov";
    film.recipe = recipe;
    film.costPerMetre = {900};
    return film;
}

} // namespace

void stopBecause(const std::string& reason) {
    std::fprintf(stderr, "The test's shop could not be made: %s\n", reason.c_str());
    std::abort();
}

HandClock::HandClock(Instant at)
    : m_hands(std::make_shared<Hands>()) {
    m_hands->wall = at;
}

Clock HandClock::clock() const {
    return {[hands = m_hands] { return hands->wall; }, [hands = m_hands] { return hands->steady; },
            [](Instant) { return 0s; }};
}

void HandClock::pass(std::chrono::milliseconds span) {
    m_hands->steady += span;
    m_hands->sinceSecond += span;
    const auto whole = std::chrono::floor<Seconds>(m_hands->sinceSecond);
    m_hands->wall += whole;
    m_hands->sinceSecond -= whole;
}

void HandClock::setWall(Instant at) {
    m_hands->wall = at;
    m_hands->sinceSecond = 0ms;
}

ShopFixture::ShopFixture() {
    auto made = db::Shop::create(path(), m_time.clock().now);
    m_desk = std::make_unique<ShopDesk>(valueOf(std::move(made)), m_time.clock());
}

ShopFixture::~ShopFixture() = default;

std::filesystem::path ShopFixture::path() const {
    return std::filesystem::path{m_folder.path().toStdString()} / "shop.holdfast";
}

void ShopFixture::reopen() {
    m_desk.reset();
    auto opened = db::Shop::open(path(), m_time.clock().now);
    m_desk = std::make_unique<ShopDesk>(valueOf(std::move(opened)), m_time.clock());
}

BlankStyleId ShopFixture::addStyle(const std::string& name, const std::function<void(BlankStyle&)>& change) {
    BlankStyle style = usualStyle(name, now().today());
    if (change)
        change(style);
    return valueOf(db::addStyle(file(), style));
}

std::vector<Colour> ShopFixture::coloursOf(BlankStyleId style) {
    return desk().shop()->facts.styles.at(style).colours;
}

FilmId ShopFixture::addFilm(const std::string& shade, const std::function<void(Film&)>& change) {
    Film film = usualFilm(shade);
    if (change)
        change(film);
    return valueOf(db::addFilm(file(), film));
}

PlaceId ShopFixture::addPlace(const std::string& name) {
    const PlaceId place = valueOf(db::addPlace(file(), name));
    valueOf(db::recordReading(file(), place, {now().instant, 19_C, 44_rh}));
    return place;
}

RollId ShopFixture::receiveRoll(FilmId film, PlaceId place, Millimetres length) {
    db::RollReceived roll;
    roll.film = film;
    roll.width = 500_mm;
    roll.length = length;
    roll.receivedOn = now().today();
    roll.place = place;
    return valueOf(db::receiveRoll(file(), roll, now())).id;
}

PressId ShopFixture::addPress(const std::string& name) {
    Press press;
    press.name = name;
    press.platenWidth = 380_mm;
    press.platenHeight = 380_mm;
    const PressId id = valueOf(db::addPress(file(), press));
    valueOf(db::recordPressCheck(file(), id, 150_C, {150_C, 149_C, 151_C}, "the maker"));
    return id;
}

BlankLotId ShopFixture::receiveBlanks(BlankStyleId style, const std::string& size, ColourId colour,
                                      std::int64_t units) {
    return valueOf(db::receiveBlanks(file(), style, size, colour, units, now()));
}

BlankLotId ShopFixture::wash(BlankLotId lot, std::int64_t units) {
    db::WashPlan plan;
    plan.parts = {{lot, units}};
    plan.detergent = "mild";
    const Instant after = now().instant;
    time().setWall(after - kWashAndDry);
    const WashLoadId load = valueOf(db::startWash(file(), plan));
    time().setWall(after);
    valueOf(db::markDry(file(), load));
    for (const BlankLot& each : desk().shop()->facts.lots)
        if (each.lastLoad == load)
            return each.id;
    stopBecause("no lot came out of the wash");
}

UsualShop ShopFixture::stockUsualShop() {
    UsualShop usual;
    usual.style = addStyle("Tee");
    usual.moss = coloursOf(usual.style).at(0).id;
    usual.chalk = coloursOf(usual.style).at(1).id;
    usual.film = addFilm("Dusk");
    usual.place = addPlace("Film drawer");
    usual.roll = receiveRoll(usual.film, usual.place);
    usual.press = addPress();
    usual.washed = wash(receiveBlanks(usual.style, "M", usual.moss, 6), 6);
    usual.unwashed = receiveBlanks(usual.style, "L", usual.moss, 4);
    return usual;
}

GarmentDraft ShopFixture::aGarment(const UsualShop& usual, const std::string& size) {
    DecalDraft heron;
    heron.film = usual.film;
    heron.content = Artwork{"heron"};
    heron.below = 75_mm;
    heron.width = 200_mm;
    heron.height = 280_mm;
    GarmentDraft garment;
    garment.style = usual.style;
    garment.size = size;
    garment.colour = usual.moss;
    garment.price = {2650};
    garment.decals = {heron};
    return garment;
}

OrderDraft ShopFixture::anOrder(std::vector<GarmentDraft> garments, const std::string& customer) {
    OrderDraft order;
    order.customerName = customer;
    order.customerPhone = "07700 900418";
    order.garments = std::move(garments);
    order.promised = LocalTime{now().today()} + Days{2} + Hours{15};
    return order;
}

db::OrderTaken ShopFixture::takeOrder(std::vector<GarmentDraft> garments, const std::string& customer) {
    return valueOf(db::takeOrder(file(), anOrder(std::move(garments), customer), now()));
}

std::vector<GarmentId> ShopFixture::garmentsOf(OrderId order) {
    std::vector<GarmentId> garments;
    for (const Garment* garment : desk().shop()->facts.garmentsOf(order))
        garments.push_back(garment->id);
    return garments;
}

void ShopFixture::cut(GarmentId garment, RollId roll) {
    std::vector<DecalId> decals;
    for (const Decal& decal : desk().shop()->facts.garments.at(garment).decals)
        decals.push_back(decal.id);
    valueOf(db::cutDecals(file(), roll, decals, 300_mm, desk().now()));
}

void ShopFixture::press(GarmentId garment) {
    const Route route = desk().shop()->of(garment).route;
    valueOf(db::takeUp(file(), garment, route, desk().now()));
    for (const RouteStep& step : route.steps) {
        time().pass(step.total());
        valueOf(db::finishStep(file(), garment, route));
    }
}

Stage ShopFixture::stageOf(GarmentId garment) {
    return desk().shop()->of(garment).stage;
}

void showWindow(QWidget& window, QSize size) {
    window.resize(size);
    window.show();
    window.activateWindow();
    if (!QTest::qWaitForWindowActive(&window))
        stopBecause("the window did not get the keyboard");
}

void typeText(const QString& text) {
    for (const QChar letter : text) {
        QWidget* target = QApplication::focusWidget();
        if (!target)
            stopBecause("nothing has the keyboard");
        QKeyEvent press(QEvent::KeyPress, 0, Qt::NoModifier, QString(letter));
        QKeyEvent release(QEvent::KeyRelease, 0, Qt::NoModifier, QString(letter));
        QApplication::sendEvent(target, &press);
        QApplication::sendEvent(target, &release);
    }
}

} // namespace holdfast::app::test
