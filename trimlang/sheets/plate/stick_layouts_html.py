MADE_FROM = 'fb991866e310a46731ee47b1b38a3faa3d764918a268cfb0c8c44d52e5697372'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'stick-layouts.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    pass
    parent_template = environment.get_template('parts/page.html', 'stick-layouts.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'stick-layouts'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_trims = resolve('trims')
    try:
        t_1 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_1(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    yield '<p class="how">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "Each bar is a stick seen from above, fence side up, cut from the left. Marks are tape readings from the stick's left end to the long points; saw on the waste side of a mark. Mitres are drawn leaning the right way, but not to scale; black is sawdust and waste.", _block_vars=_block_vars))
    yield '</p>\n'
    for l_1_group in (undefined(name='trims') if l_0_trims is missing else l_0_trims):
        _loop_vars = {}
        pass
        yield '<section>\n<h2>'
        yield escape(environment.getattr(l_1_group, 'trim'))
        yield '</h2>\n<p class="small">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'the longest bar is {length}', length=environment.getattr(l_1_group, 'scale'), _loop_vars=_loop_vars))
        yield '</p>\n'
        for l_2_stick in environment.getattr(l_1_group, 'sticks'):
            _loop_vars = {}
            pass
            yield '<section class="stick">\n<h3>'
            yield escape(environment.getattr(l_2_stick, 'id'))
            yield ': '
            yield escape(environment.getattr(l_2_stick, 'source'))
            yield '</h3>\n<svg class="bar" viewBox="0 -0.5 187 9" role="img" aria-label="'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), '{n} pieces on {stick}', n=t_1(environment.getattr(l_2_stick, 'rows')), stick=environment.getattr(l_2_stick, 'id'), _loop_vars=_loop_vars))
            yield '">\n<rect class="spoil" x="0" y="0" width="'
            yield escape(environment.getattr(l_2_stick, 'wide'))
            yield '" height="8" fill="#000" stroke="#000" stroke-width="0.3"/>\n'
            if environment.getattr(l_2_stick, 'offcut'):
                pass
                yield '<rect class="offcut" x="'
                yield escape(environment.getattr(l_2_stick, 'offcut_from'))
                yield '" y="0" width="'
                yield escape(environment.getattr(l_2_stick, 'offcut_wide'))
                yield '" height="8" fill="#fff" stroke="#000" stroke-width="0.3" stroke-dasharray="1 0.8"/>\n'
            for l_3_block in environment.getattr(l_2_stick, 'blocks'):
                _loop_vars = {}
                pass
                yield '<polygon class="wood" points="'
                yield escape(environment.getattr(l_3_block, 'points'))
                yield '" fill="#fff" stroke="#000" stroke-width="0.3"/>\n'
            l_3_block = missing
            for l_3_block in environment.getattr(l_2_stick, 'blocks'):
                _loop_vars = {}
                pass
                if environment.getattr(l_3_block, 'label'):
                    pass
                    yield '<text class="say" x="'
                    yield escape(environment.getattr(l_3_block, 'middle'))
                    yield '" y="5.2" text-anchor="middle" font-size="3.2" font-weight="700" font-family="Trim Sans, DejaVu Sans, sans-serif" fill="#000">'
                    yield escape(environment.getattr(l_3_block, 'label'))
                    yield '</text>\n'
            l_3_block = missing
            yield '</svg>\n<table class="marks">\n<thead><tr><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'cut', _loop_vars=_loop_vars))
            yield '</th><th scope="col">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'piece', _loop_vars=_loop_vars))
            yield '</th><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'length', _loop_vars=_loop_vars))
            yield '</th><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'left', _loop_vars=_loop_vars))
            yield '</th><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'right', _loop_vars=_loop_vars))
            yield '</th><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'from mark', _loop_vars=_loop_vars))
            yield '</th><th scope="col" class="number">'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'to mark', _loop_vars=_loop_vars))
            yield '</th></tr></thead>\n<tbody>\n'
            for l_3_row in environment.getattr(l_2_stick, 'rows'):
                _loop_vars = {}
                pass
                yield '<tr><td class="number">'
                yield escape(environment.getattr(l_3_row, 'number'))
                yield '</td><th scope="row">'
                yield escape(environment.getattr(l_3_row, 'id'))
                yield '</th><td class="number"><b>'
                yield escape(environment.getattr(l_3_row, 'length'))
                yield '</b></td><td class="number">'
                if environment.getattr(l_3_row, 'shared'):
                    pass
                    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), '{setting}, shared', setting=environment.getattr(l_3_row, 'left'), _loop_vars=_loop_vars))
                else:
                    pass
                    yield escape(environment.getattr(l_3_row, 'left'))
                yield '</td><td class="number">'
                yield escape(environment.getattr(l_3_row, 'right'))
                yield '</td><td class="number">'
                yield escape(environment.getattr(l_3_row, 'start'))
                yield '</td><td class="number">'
                yield escape(environment.getattr(l_3_row, 'end'))
                yield '</td></tr>\n'
            l_3_row = missing
            yield '</tbody>\n</table>\n<p class="small">'
            if environment.getattr(l_2_stick, 'square_off'):
                pass
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'the first {length} are waste', length=environment.getattr(l_2_stick, 'square_off'), _loop_vars=_loop_vars))
                yield '; '
            if environment.getattr(l_2_stick, 'offcut'):
                pass
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'offcut {length}', length=environment.getattr(l_2_stick, 'offcut'), _loop_vars=_loop_vars))
            else:
                pass
                yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'nothing left', _loop_vars=_loop_vars))
            yield '</p>\n</section>\n'
        l_2_stick = missing
        yield '</section>\n'
    l_1_group = missing

blocks = {'kind': block_kind, 'body': block_body}
debug_info = '1=12&2=17&3=27&4=44&5=46&7=50&8=52&9=54&11=58&12=62&13=64&14=66&15=69&17=73&18=77&20=80&21=83&22=86&27=92&29=106&30=110&34=131'
