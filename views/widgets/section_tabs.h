// The sections of a page: a row of names, the current one underlined, over a stack of pages. One
// tab stop; arrow keys, Home and End move along the row, and a name that does not fit wraps onto
// a second row rather than being cut.
#pragma once

#include <QAbstractButton>
#include <QVector>
#include <QWidget>

namespace rickyard::views {

class FittingStack;

// One name of the row. Its figure, where it has one, stands beside it in muted ink.
class SectionTab : public QAbstractButton
{
    Q_OBJECT

public:
    explicit SectionTab(const QString &name, QWidget *parent = nullptr);
    void setFigure(const QString &figure);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent *event) override;
    void enterEvent(QEnterEvent *event) override;
    void leaveEvent(QEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    QString m_figure;
};

class SectionTabs : public QWidget
{
    Q_OBJECT

public:
    explicit SectionTabs(QWidget *parent = nullptr);

    // Takes the page; the first section becomes the current one. Returns its index.
    int addSection(const QString &name, QWidget *page);
    [[nodiscard]] int count() const { return static_cast<int>(m_tabs.size()); }
    [[nodiscard]] int current() const;
    [[nodiscard]] QWidget *page(int index) const;
    // Shown beside the name, such as a count; empty takes it away.
    void setFigure(int index, const QString &figure);
    // The button of one section, for tests and for moving the focus.
    [[nodiscard]] QAbstractButton *tab(int index) const { return m_tabs.value(index); }

    [[nodiscard]] QSize minimumSizeHint() const override;
    bool eventFilter(QObject *watched, QEvent *event) override;

public Q_SLOTS:
    void setCurrent(int index);

Q_SIGNALS:
    void currentChanged(int index);

protected:
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    void arrange();
    void describe();
    [[nodiscard]] int rowHeight() const;

    QWidget *m_row;
    FittingStack *m_stack;
    QVector<SectionTab *> m_tabs;
};

} // namespace rickyard::views
