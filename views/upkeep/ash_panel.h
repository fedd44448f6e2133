// Ash: taken out of which pit into which can; when each can may be tipped at the earliest; tipped
// where. It is never called cold or safe.
#pragma once

#include "views/page.h"

#include <QHash>

class QComboBox;
class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class FieldEditor;
class FieldRow;
class NoticeBar;
class RecordList;
class StatusPill;
class TextLabel;

// A can that holds ash, by the books.
struct AshCan {
    QString name;
    QVector<domain::AshLoad> loads; // newest first
    domain::Instant notBefore;
    bool waiting = false;
};
// The one to be tipped first leads.
QVector<AshCan> ashCans(const domain::Books &books, domain::Instant now);

class AshPanel : public QWidget
{
    Q_OBJECT

public:
    explicit AshPanel(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    // Prefills the pit and puts the cursor there.
    void startTakingOut(domain::RecordId pit);
    bool takeOut();
    // Opens "Tipped" for a can.
    void startTipping(const QString &can);
    bool tip();
    [[nodiscard]] RecordList &list() { return *m_list; }
    [[nodiscard]] QComboBox *pit() const { return m_pit; }
    [[nodiscard]] QComboBox *can() const { return m_can; }
    [[nodiscard]] FieldEditor *where() const
    {
        return m_editors.value(QStringLiteral("tipped_where"));
    }
    [[nodiscard]] FieldRow *row(const QString &key) const { return m_rows.value(key); }
    // "Can 1: from Big pit, may be tipped from … at the earliest".
    [[nodiscard]] QStringList canWords() const;

private:
    QWidget *buildTakeOut();
    QWidget *buildTip();
    FieldRow *addField(QVBoxLayout *column, const QString &key, const QString &label);
    void showCans();
    void showInPit();
    void showProblems(const domain::Problems &problems);

    PageContext &m_context;
    QVBoxLayout *m_cans = nullptr;
    TextLabel *m_inPit = nullptr; // how much ash the chosen pit should hold
    QWidget *m_takeOut = nullptr;
    QWidget *m_tip = nullptr;
    TextLabel *m_tipHead = nullptr;
    QComboBox *m_pit = nullptr;
    QComboBox *m_can = nullptr;
    NoticeBar *m_notice = nullptr;
    QPushButton *m_takeOutButton = nullptr;
    QPushButton *m_tipButton = nullptr;
    QHash<QString, FieldEditor *> m_editors;
    QHash<QString, FieldRow *> m_rows;
    RecordList *m_list = nullptr;
    QString m_tipping;
    bool m_early = false; // asked once already
    bool m_timeTyped = false;
    QStringList m_words;
};

} // namespace rickyard::views
