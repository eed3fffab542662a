// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The films as a list that opens in the middle of the table: shade, whether it fits and why not, metres free
// and the roll it would be cut from. Arrows move, the beginning of any word of a film's name finds it, digits
// go to the first nine; Enter chooses, Escape closes. Nothing is chosen on the way, and no letter goes
// further than the list.

#include "app/places/fair_table/film_offer.h"
#include "app/widgets/type_ahead.h"

#include <QAbstractListModel>
#include <QStyledItemDelegate>
#include <QWidget>

#include <memory>

class QListView;

namespace holdfast::app {

class KeyHint;

class FilmListModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    // The offers point into the shop.
    void show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop, bool knowsStyle);
    const FilmOffer& offer(int row) const { return m_offers[static_cast<std::size_t>(row)]; }
    int rowOf(FilmId film) const; // -1 for none
    bool knowsStyle() const { return m_knowsStyle; }

    int rowCount(const QModelIndex& parent = {}) const override;
    // The whole line in words; as Qt::EditRole the name alone.
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<FilmOffer> m_offers;
    std::shared_ptr<const ReckonedShop> m_shop;
    bool m_knowsStyle = false;
};

// Words of one offer, as the list shows them.
QString fitnessWords(const FilmOffer& offer, bool knowsStyle);
QString lengthWords(const FilmOffer& offer); // "12.7 m on 2 rolls"
QString rollWords(const FilmOffer& offer);   // "R-11 first"

class FilmDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    static bool isNarrow(const QStyleOptionViewItem& option);
    void paintRight(QPainter& painter, const QRectF& row, const FilmOffer& offer) const;
    void paintFitness(QPainter& painter, const QRectF& line, const FilmOffer& offer, bool knowsStyle) const;
};

class FilmList : public QWidget {
    Q_OBJECT

public:
    explicit FilmList(QWidget* parent = nullptr);

    void show(std::vector<FilmOffer> offers, std::shared_ptr<const ReckonedShop> shop, bool knowsStyle,
              FilmId chosen);
    // What Enter and Shift with Enter will do: "both decals", "only Heron".
    void setReach(const QString& whole, const QString& alone);
    void takeFocus();

    QSize sizeHint() const override { return {444, 268}; }
    QSize minimumSizeHint() const override { return {200, 0}; }

signals:
    void chosen(holdfast::FilmId film, bool isAlone);
    void closed(); // by Escape
    void left();   // the keyboard went elsewhere in the window

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void choose(bool isAlone);
    bool takeKey(const QKeyEvent& key);
    void goTo(int row);

    FilmListModel* m_model = nullptr;
    QListView* m_view = nullptr;
    TypeAhead m_typeAhead;
    KeyHint* m_enter = nullptr; // these can be pressed, too
    KeyHint* m_shiftEnter = nullptr;
};

} // namespace holdfast::app
