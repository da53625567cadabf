MADE_FROM = 'b5a0f161a4b4c6f3435d0b11d4753295d9aec767ba87c7bb04afd95c4c758360'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'tickets.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_ends = l_0_cut = missing
    pass
    parent_template = environment.get_template('parts/page.html', 'tickets.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    included_template = environment.get_template('parts/ends.svg', 'tickets.html')._get_default_module(context)
    l_0_ends = getattr(included_template, 'ends', missing)
    if l_0_ends is missing:
        l_0_ends = undefined(f"the template {included_template.__name__!r} (imported on line 2 in 'tickets.html') does not export the requested name 'ends'", name='ends')
    context.vars['ends'] = l_0_ends
    context.exported_vars.discard('ends')
    def macro(l_1_end):
        t_1 = []
        if l_1_end is missing:
            l_1_end = undefined("parameter 'end' was not provided", name='end')
        pass
        t_1.extend((
            '<div class="cut">\n<p class="side">',
            escape(environment.getattr(l_1_end, 'side')),
            '</p>\n<p class="setting">',
            escape(environment.getattr(l_1_end, 'setting')),
            '</p>\n<p class="joint">',
            escape(environment.getattr(l_1_end, 'joint')),
            '</p>\n<p class="point">',
            escape(environment.getattr(l_1_end, 'long_point')),
            '</p>\n',
        ))
        if environment.getattr(l_1_end, 'lies'):
            pass
            t_1.extend((
                '<p class="lies">',
                escape(environment.getattr(l_1_end, 'lies')),
                '</p>',
            ))
        if environment.getattr(l_1_end, 'exact'):
            pass
            t_1.extend((
                '<p class="exact">',
                escape(environment.getattr(l_1_end, 'exact')),
                '</p>',
            ))
        if environment.getattr(l_1_end, 'then'):
            pass
            t_1.extend((
                '<p class="then">',
                escape(environment.getattr(l_1_end, 'then')),
                '</p>',
            ))
        t_1.append(
            '</div>\n',
        )
        return concat(t_1)
    context.exported_vars.add('cut')
    context.vars['cut'] = l_0_cut = Macro(environment, macro, 'cut', ('end',), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_label = resolve('label')
    pass
    yield 'tickets'
    if (undefined(name='label') if l_0_label is missing else l_0_label):
        pass
        yield ' label'
        if environment.getattr((undefined(name='label') if l_0_label is missing else l_0_label), 'wide'):
            pass
            yield ' wide'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_tickets = resolve('tickets')
    try:
        t_2 = environment.filters['batch']
    except KeyError:
        @internalcode
        def t_2(*unused):
            raise TemplateRuntimeError("No filter named 'batch' found.")
    try:
        t_3 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_3(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    yield '<section class="how">\n<p>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Stand the trim up, back against the fence, face towards you: left on the ticket is left at the saw. “44.5° right” is a cut that runs to the right on its way from the fence towards you.', _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "Too tall to stand? Lay it face up, top edge to the fence, and tilt the blade's top to the same side by the same angle.", _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'A dot marks a long point. The length is always overall, to the long points.', _block_vars=_block_vars))
    yield '</p>\n</section>\n<p class="find"><label>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Find a piece', _block_vars=_block_vars))
    yield ' <input type="search" id="find" autocomplete="off"></label> <span id="found" role="status"></span></p>\n'
    for l_1_pair in t_2((undefined(name='tickets') if l_0_tickets is missing else l_0_tickets), 2):
        _loop_vars = {}
        pass
        yield '<div class="pair">\n'
        for l_2_ticket in l_1_pair:
            l_2_code = resolve('code')
            l_2_ends = resolve('ends')
            l_2_cut = resolve('cut')
            _loop_vars = {}
            pass
            yield '<article class="ticket" id="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '" data-piece="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '">\n<div class="main">\n<div class="name"><h2>'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield '</h2><p class="room">'
            yield escape(environment.getattr(l_2_ticket, 'room'))
            yield ' · '
            yield escape(environment.getattr(l_2_ticket, 'trim'))
            if environment.getattr(l_2_ticket, 'part'):
                pass
                yield ' · '
                yield escape(environment.getattr(l_2_ticket, 'part'))
            yield '</p></div>\n'
            if (undefined(name='code') if l_2_code is missing else l_2_code):
                pass
                yield '<div class="code">'
                yield escape(context.call((undefined(name='code') if l_2_code is missing else l_2_code), environment.getattr(l_2_ticket, 'payload'), environment.getattr(l_2_ticket, 'id'), _loop_vars=_loop_vars))
                yield '</div>'
            yield '<p class="length"><b>'
            yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'whole'))
            yield '</b>'
            if environment.getattr(environment.getattr(l_2_ticket, 'length'), 'fraction'):
                pass
                yield '<b class="fraction"> '
                yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'fraction'))
                yield '</b>'
            yield '<span class="unit"> '
            yield escape(environment.getattr(environment.getattr(l_2_ticket, 'length'), 'unit'))
            yield '</span></p>\n'
            yield escape(context.call((undefined(name='ends') if l_2_ends is missing else l_2_ends), environment.getattr(l_2_ticket, 'drawing'), context.call((undefined(name='_') if l_0__ is missing else l_0__), 'plan of both ends: left {left}, right {right}', left=environment.getattr(environment.getattr(l_2_ticket, 'left'), 'setting'), right=environment.getattr(environment.getattr(l_2_ticket, 'right'), 'setting'), _loop_vars=_loop_vars), environment.getitem({'face': context.call((undefined(name='_') if l_0__ is missing else l_0__), 'face', _loop_vars=_loop_vars), 'bottom': context.call((undefined(name='_') if l_0__ is missing else l_0__), 'flat', _loop_vars=_loop_vars), 'ceiling': context.call((undefined(name='_') if l_0__ is missing else l_0__), 'crown', _loop_vars=_loop_vars), 'mixed': context.call((undefined(name='_') if l_0__ is missing else l_0__), '2 views', _loop_vars=_loop_vars)}, environment.getattr(environment.getattr(l_2_ticket, 'drawing'), 'view')), _loop_vars=_loop_vars))
            yield '\n<div class="cuts">\n'
            yield escape(context.call((undefined(name='cut') if l_2_cut is missing else l_2_cut), environment.getattr(l_2_ticket, 'left'), _loop_vars=_loop_vars))
            yield '\n'
            yield escape(context.call((undefined(name='cut') if l_2_cut is missing else l_2_cut), environment.getattr(l_2_ticket, 'right'), _loop_vars=_loop_vars))
            yield '\n</div>\n</div>\n<dl>\n<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'measured', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_2_ticket, 'measured'))
            if environment.getattr(l_2_ticket, 'edges'):
                pass
                yield ': '
                yield escape(environment.getattr(l_2_ticket, 'edges'))
            yield '</dd></div>\n<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'stick', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_2_ticket, 'stick'))
            yield ', '
            yield escape(environment.getattr(l_2_ticket, 'order'))
            yield '</dd></div>\n'
            if environment.getattr(l_2_ticket, 'mates'):
                pass
                yield '<div><dt>'
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'meets', _loop_vars=_loop_vars))
                yield '</dt><dd>'
                yield escape(environment.getattr(l_2_ticket, 'mates'))
                yield '</dd></div>'
            yield '<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'length', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_2_ticket, 'rounding'))
            yield '</dd></div>\n'
            if environment.getattr(l_2_ticket, 'fit'):
                pass
                yield '<div><dt>'
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'fit', _loop_vars=_loop_vars))
                yield '</dt><dd>'
                yield escape(environment.getattr(l_2_ticket, 'fit'))
                yield '</dd></div>'
            if environment.getattr(l_2_ticket, 'note'):
                pass
                yield '<div><dt>'
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'note', _loop_vars=_loop_vars))
                yield '</dt><dd class="note">'
                yield escape(environment.getattr(l_2_ticket, 'note'))
                yield '</dd></div>'
            if environment.getattr(l_2_ticket, 'caution'):
                pass
                yield '<div><dt>'
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'care', _loop_vars=_loop_vars))
                yield '</dt><dd class="care">'
                yield escape(environment.getattr(l_2_ticket, 'caution'))
                yield '</dd></div>'
            yield '</dl>\n<p class="tick"><label><input type="checkbox" data-tick="'
            yield escape(environment.getattr(l_2_ticket, 'id'))
            yield ':cut"> '
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'cut', _loop_vars=_loop_vars))
            yield '</label></p>\n</article>\n'
        l_2_ticket = l_2_code = l_2_ends = l_2_cut = missing
        if (t_3(l_1_pair) == 1):
            pass
            yield '<div class="ticket blank"></div>'
        yield '</div>\n'
    l_1_pair = missing

def block_script(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_script = resolve('script')
    pass
    yield '<script>'
    yield escape((undefined(name='script') if l_0_script is missing else l_0_script))
    yield '</script>'

blocks = {'kind': block_kind, 'body': block_body, 'script': block_script}
debug_info = '1=13&2=16&4=22&6=29&7=31&8=33&9=35&10=38&11=45&12=52&3=67&15=84&17=107&19=113&20=115&22=119&23=126&25=130&26=140&27=146&28=156&30=158&31=160&35=162&36=170&37=176&38=184&39=188&40=195&41=202&43=210&46=215&50=221'
