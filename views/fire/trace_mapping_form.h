// How a logger's columns become traces: when each row was, and which columns are probes.
#pragma once

#include "models/exchange/probe_log.h"

#include <QHash>
#include <QTimeZone>
#include <QWidget>

class QCheckBox;
class QComboBox;
class QDateTimeEdit;
class QGridLayout;
class QLineEdit;
class QVBoxLayout;

namespace rickyard::views {

class FieldRow;
class TextLabel;

class TraceMappingForm : public QWidget
{
    Q_OBJECT

public:
    // `zone`: of the yard; the start of a log without dates is typed in it.
    explicit TraceMappingForm(const QTimeZone &zone, QWidget *parent = nullptr);

    // The headers that columns are chosen from.
    void setHeader(const QStringList &header);
    void setMapping(const exchange::ProbeLogMapping &mapping);
    // `from` and `to` are not of this form and stay empty.
    [[nodiscard]] exchange::ProbeLogMapping mapping() const;
    // Puts what is wrong beside the part at fault; returns what has no part of its own.
    QStringList showProblems(const domain::Problems &problems);

    // Of a column: the box that makes it a probe, and its name.
    [[nodiscard]] QCheckBox *probeBox(const QString &column) const;
    [[nodiscard]] QLineEdit *probeName(const QString &column) const;
    [[nodiscard]] QComboBox *unitBox() const { return m_unit; }
    [[nodiscard]] QComboBox *timeStyleBox() const { return m_timeStyle; }

Q_SIGNALS:
    void changed();
    // Another separator or row of headers: the file has to be guessed anew.
    void layoutChanged();

private:
    struct Probe {
        QString column;
        QCheckBox *box = nullptr;
        QLineEdit *name = nullptr;
    };
    void buildTime(QVBoxLayout *column);
    void buildProbes(QVBoxLayout *column);
    void buildFile(QVBoxLayout *column);
    void fillProbes();
    void fillColumns();
    void showWays();
    [[nodiscard]] QDateTime wallClock(domain::Instant time) const;
    QComboBox *box(const QString &name, const QStringList &choices = {});
    FieldRow *row(const QString &key, const QString &label, QWidget *editor);
    static void choose(QComboBox *box, const QString &column);

    exchange::ProbeLogMapping m_mapping; // parts that are not shown are kept
    QTimeZone m_yardZone;
    QStringList m_header;
    QVector<Probe> m_probes;
    QHash<QString, FieldRow *> m_rows;
    QComboBox *m_timeStyle = nullptr;
    QComboBox *m_time = nullptr;
    QComboBox *m_date = nullptr;
    QLineEdit *m_format = nullptr;
    QComboBox *m_scale = nullptr;
    QDateTimeEdit *m_start = nullptr;
    QComboBox *m_zoneKind = nullptr;
    QLineEdit *m_zone = nullptr;
    QWidget *m_probeHolder = nullptr;
    QGridLayout *m_probeGrid = nullptr;
    TextLabel *m_probeProblem = nullptr;
    QComboBox *m_unit = nullptr;
    QComboBox *m_separator = nullptr;
    QComboBox *m_decimal = nullptr;
    QComboBox *m_headerRow = nullptr;
    QLineEdit *m_missing = nullptr;
};

} // namespace rickyard::views
