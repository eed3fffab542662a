// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/shop_start.h"

#include "app/desk/formats.h"
#include "app/desk/local_currency.h"
#include "app/shell/shop_paths.h"
#include "app/shell/start_backups.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QFileDialog>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QTimer>

namespace holdfast::app {

namespace {

constexpr int kColumn = 620;
constexpr int kStartMark = 84;
constexpr int kCurrencyCode = 3;                  // letters
constexpr std::chrono::milliseconds kLaidOut{40}; // words that wrap take the layout more than one round
constexpr int kRoomForMark = 620;                 // high; in a lower window what can be done needs the room

class StartMark : public QWidget {
public:
    StartMark() { setFixedHeight(kStartMark + kSpace16); }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintMark(painter, QRectF((width() - kStartMark) / 2.0, 0, kStartMark, kStartMark), tokens().indigo);
    }
};

QString homeShort(const std::filesystem::path& path) {
    const QString whole = words(path.string());
    const QString home = QDir::homePath();
    return whole.startsWith(home + QLatin1Char('/')) ? QLatin1Char('~') + whole.mid(home.size()) : whole;
}

std::filesystem::path typedPath(const QString& typed) {
    QString path = typed.trimmed();
    if (path == QLatin1String("~") || path.startsWith(QLatin1String("~/")))
        path = QDir::homePath() + path.mid(1);
    return std::filesystem::path(plain(path));
}

} // namespace

ShopStart::ShopStart(Clock clock, QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("shopStart"));
    auto* inner = new QWidget;
    inner->setMaximumWidth(kColumn);
    auto* column = new QVBoxLayout(inner);
    column->setContentsMargins(kFocusRoom, kSpace12, kFocusRoom, kSpace16);
    column->setSpacing(kCardStack);
    m_mark = new StartMark;
    column->addWidget(m_mark);
    auto* title = new Label(tr("Holdfast"), Type::PlaceTitle);
    title->setAlignment(Qt::AlignHCenter);
    column->addWidget(title);
    auto* sentence =
        new Label(tr("Orders, stock and press work of one workshop, kept in one file on this computer."),
                  Type::Body, &Tokens::ink2);
    sentence->wrapped()->setAlignment(Qt::AlignHCenter);
    column->addWidget(sentence);
    column->addSpacing(kSpace8);
    m_trouble = new Banner;
    m_trouble->setObjectName(QStringLiteral("startTrouble"));
    m_trouble->hide();
    column->addWidget(m_trouble);
    m_backups = new StartBackups(std::move(clock));
    connect(m_backups, &StartBackups::putBack, this, &ShopStart::putBack);
    column->addWidget(m_backups);
    column->addWidget(newShop());
    column->addWidget(openShop());
    column->addWidget(demo());
    m_back = new Button(tr("Back to the open shop"), QStringLiteral("undo"), Button::Kind::Quiet);
    m_back->setObjectName(QStringLiteral("startBack"));
    m_back->showKey(QKeySequence(Qt::Key_Escape));
    m_back->hide();
    connect(m_back, &QAbstractButton::clicked, this, &ShopStart::backAsked);
    column->addWidget(m_back, 0, Qt::AlignHCenter);
    m_scroll = new VerticalScroll;
    auto* middle = new QHBoxLayout;
    middle->setContentsMargins(kGutter, 0, kGutter, 0);
    middle->addStretch(1);
    middle->addWidget(inner, kColumn); // all of a narrow window
    middle->addStretch(1);
    m_scroll->column()->addStretch(1);
    m_scroll->column()->addLayout(middle);
    m_scroll->column()->addStretch(2);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_scroll);
}

QWidget* ShopStart::newShop() {
    auto* card = new Card(tr("Start a new shop"));
    card->pad();
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace12);
    m_name = new Field(tr("Shop’s name"));
    m_name->setObjectName(QStringLiteral("startName"));
    connect(m_name, &Field::accepted, this, &ShopStart::startNew);
    connect(m_name, &Field::edited, this, &ShopStart::clearErrors);
    row->addWidget(m_name, 2);
    m_currency = new Field(tr("Currency"));
    m_currency->setObjectName(QStringLiteral("startCurrency"));
    m_currency->setText(localCurrencyCode());
    m_currency->editor()->setMaxLength(kCurrencyCode);
    connect(m_currency, &Field::accepted, this, &ShopStart::startNew);
    connect(m_currency, &Field::edited, this, &ShopStart::clearErrors);
    row->addWidget(m_currency, 1);
    auto* start = new Button(tr("Start"), Button::Kind::Primary);
    start->setObjectName(QStringLiteral("startNew"));
    start->setTargetHeight(44);
    connect(start, &QAbstractButton::clicked, this, &ShopStart::startNew);
    row->addWidget(start, 0, Qt::AlignTop);
    card->content()->addLayout(row);
    m_keptIn = new Label({}, Type::Small, &Tokens::ink2);
    card->content()->addWidget(m_keptIn->wrapped());
    return card;
}

QWidget* ShopStart::openShop() {
    auto* card = new Card(tr("Open a shop file"));
    card->pad();
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace12);
    m_file = new Field(tr("File"));
    m_file->setObjectName(QStringLiteral("startFile"));
    connect(m_file, &Field::accepted, this, &ShopStart::openFile);
    connect(m_file, &Field::edited, this, &ShopStart::clearErrors);
    row->addWidget(m_file, 1);
    auto* choose = new Button(tr("Choose"));
    choose->setObjectName(QStringLiteral("startChoose"));
    choose->setTargetHeight(44);
    connect(choose, &QAbstractButton::clicked, this, &ShopStart::chooseFile);
    row->addWidget(choose, 0, Qt::AlignTop);
    auto* open = new Button(tr("Open"));
    open->setObjectName(QStringLiteral("startOpen"));
    open->setTargetHeight(44);
    connect(open, &QAbstractButton::clicked, this, &ShopStart::openFile);
    row->addWidget(open, 0, Qt::AlignTop);
    card->content()->addLayout(row);
    return card;
}

QWidget* ShopStart::demo() {
    auto* card = new Card(tr("Look at the demo"));
    card->pad();
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace12);
    row->addWidget((new Label(tr("An invented workshop on a morning, with a fair tomorrow. Nothing you do "
                                 "there touches a shop of yours."),
                              Type::Body, &Tokens::ink2))
                       ->wrapped(),
                   1);
    m_demo = new Button(tr("Open the demo"));
    m_demo->setObjectName(QStringLiteral("startDemo"));
    m_demo->setTargetHeight(44);
    connect(m_demo, &QAbstractButton::clicked, this, &ShopStart::demoAsked);
    row->addWidget(m_demo);
    card->content()->addLayout(row);
    return card;
}

void ShopStart::begin(const QString& why) {
    clearErrors();
    m_trouble->setVisible(!why.isEmpty());
    m_trouble->set(Tone::Held, {}, why);
    m_keptIn->setText(
        tr("The name is printed on claim tickets. The shop is saved in %1").arg(homeShort(freeShopPath())));
    m_name->setFocus();
}

void ShopStart::offerBackupsOf(const std::filesystem::path& shop) {
    m_backups->offer(shop);
}

void ShopStart::setCanGoBack(bool canGoBack) {
    m_back->setVisible(canGoBack);
}

void ShopStart::clearErrors() {
    m_name->setError({});
    m_currency->setError({});
    m_file->setError({});
}

void ShopStart::refuse(const Error& error) {
    m_demo->setCannot({});
    const QString message = words(error.message);
    if (error.field == "shopName") {
        sayAt(*m_name, message);
    } else if (error.field == "currency") {
        sayAt(*m_currency, message);
    } else if (error.field == "file") {
        sayAt(*m_file, message);
    } else {
        m_trouble->set(Tone::Held, {}, message);
        m_trouble->show();
    }
}

void ShopStart::sayAt(Field& field, const QString& refusal) {
    field.setError(refusal);
    field.setFocus();
    QTimer::singleShot(kLaidOut, &field, [this, &field] { showIn(*m_scroll, field); });
}

void ShopStart::showDemoUnderWay() {
    m_demo->setCannot(tr("The demo is being made; this takes some seconds."));
}

void ShopStart::startNew() {
    emit newAsked(freeShopPath(), m_name->text(), m_currency->text());
}

void ShopStart::openFile() {
    if (m_file->text().trimmed().isEmpty()) {
        sayAt(*m_file, tr("Say which file: its folder and name, such as ~/shop.holdfast."));
        return;
    }
    emit fileAsked(typedPath(m_file->text()));
}

void ShopStart::chooseFile() {
    const QString folder = QFileInfo(words(defaultShopPath().string())).absolutePath();
    const QString chosen = QFileDialog::getOpenFileName(this, tr("Open a shop file"), folder,
                                                        tr("Shop files (*.holdfast);;All files (*)"), nullptr,
                                                        QFileDialog::DontUseNativeDialog);
    if (chosen.isEmpty())
        return;
    m_file->setText(chosen);
    openFile();
}

void ShopStart::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && !m_back->isHidden()) {
        emit backAsked();
        return;
    }
    QWidget::keyPressEvent(event);
}

void ShopStart::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    m_mark->setVisible(height() >= kRoomForMark);
}

void ShopStart::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), tokens().ground);
}

} // namespace holdfast::app
